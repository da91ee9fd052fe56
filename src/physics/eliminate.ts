/** Small real systems of equations, solved in place. */

/** Gaussian elimination with partial pivoting of n rows of n + 1; the answer stands in the last column. False where there is none. */
export function eliminate(a: Float64Array, n: number): boolean {
  const width = n + 1;
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i * width + k]!) > Math.abs(a[best * width + k]!)) best = i;
    if (!(Math.abs(a[best * width + k]!) > 0)) return false;
    if (best !== k) {
      for (let j = k; j < width; j++) {
        const held = a[k * width + j]!;
        a[k * width + j] = a[best * width + j]!;
        a[best * width + j] = held;
      }
    }
    for (let i = k + 1; i < n; i++) {
      const share = a[i * width + k]! / a[k * width + k]!;
      if (share === 0) continue;
      for (let j = k + 1; j < width; j++) a[i * width + j] = a[i * width + j]! - share * a[k * width + j]!;
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    let sum = a[k * width + n]!;
    for (let j = k + 1; j < n; j++) sum -= a[k * width + j]! * a[j * width + n]!;
    a[k * width + n] = sum / a[k * width + k]!;
  }
  return true;
}

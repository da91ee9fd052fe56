/** Small real systems of equations, solved in place. */

/** Gaussian elimination with partial pivoting of n rows of n + 1; the answer stands in the last column. False where there is none. */
export function eliminate(a: Float64Array, n: number): boolean {
  const width = n + 1;
  for (let k = 0; k < n; k++) {
    const row = k * width;
    const end = row + width;
    let best = row;
    let most = Math.abs(a[row + k]!);
    for (let other = row + width; other < n * width; other += width) {
      const size = Math.abs(a[other + k]!);
      if (size > most) [best, most] = [other, size];
    }
    if (!(most > 0)) return false;
    if (best !== row) {
      for (let j = k; j < width; j++) {
        const held = a[row + j]!;
        a[row + j] = a[best + j]!;
        a[best + j] = held;
      }
    }
    const pivot = a[row + k]!;
    for (let other = row + width; other < n * width; other += width) {
      const share = a[other + k]! / pivot;
      if (share === 0) continue;
      for (let from = row + k + 1, to = other + k + 1; from < end; from++, to++) a[to] = a[to]! - share * a[from]!;
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    const row = k * width;
    let sum = a[row + n]!;
    for (let j = k + 1, at = (k + 1) * width + n; j < n; j++, at += width) sum -= a[row + j]! * a[at]!;
    a[row + n] = sum / a[row + k]!;
  }
  return true;
}

/**
 * Small dense complex linear systems A X = F with partial pivoting, real and imaginary parts interleaved.
 *
 * A is n x n, F is n x m; both lie in one row-major array of rows of n + m complex numbers. Elimination overwrites A; X replaces F.
 * Pivot: the entry of largest |re|^2 + |im|^2 in the column. A pivot of exactly zero (a lossless circuit exactly on resonance)
 * is replaced by 1e-18 of the largest entry of its row in A, so that the answer is very large but finite.
 * Source: Golub and Van Loan, Matrix Computations, sec. 3.4 (from memory).
 */
export function solveDense(a: Float64Array, n: number, m: number): void {
  const width = 2 * (n + m);
  for (let k = 0; k < n; k++) {
    const kk = k * width + 2 * k;
    let best = a[kk]! * a[kk]! + a[kk + 1]! * a[kk + 1]!;
    let pivot = k;
    for (let i = k + 1; i < n; i++) {
      const at = i * width + 2 * k;
      const size = a[at]! * a[at]! + a[at + 1]! * a[at + 1]!;
      if (size > best) {
        best = size;
        pivot = i;
      }
    }
    if (pivot !== k) {
      const p = pivot * width;
      const q = k * width;
      for (let j = 2 * k; j < width; j++) {
        const t = a[p + j]!;
        a[p + j] = a[q + j]!;
        a[q + j] = t;
      }
    }
    if (best === 0) {
      a[kk] = smallPivot(a, k * width, n);
      best = a[kk]! * a[kk]!;
    }
    const ir = a[kk]! / best;
    const ii = -a[kk + 1]! / best;
    // The pivot's place keeps its reciprocal for the back substitution.
    a[kk] = ir;
    a[kk + 1] = ii;
    for (let i = k + 1; i < n; i++) {
      const row = i * width;
      const lr0 = a[row + 2 * k]!;
      const li0 = a[row + 2 * k + 1]!;
      if (lr0 === 0 && li0 === 0) continue;
      const lr = lr0 * ir - li0 * ii;
      const li = lr0 * ii + li0 * ir;
      const shift = row - k * width;
      for (let j = kk + 2, end = k * width + width; j < end; j += 2) {
        const ur = a[j]!;
        const ui = a[j + 1]!;
        a[j + shift] = a[j + shift]! - (lr * ur - li * ui);
        a[j + shift + 1] = a[j + shift + 1]! - (lr * ui + li * ur);
      }
    }
  }
  for (let c = 2 * n; c < width; c += 2) {
    for (let i = n - 1; i >= 0; i--) {
      const row = i * width;
      let sr = a[row + c]!;
      let si = a[row + c + 1]!;
      for (let j = i + 1; j < n; j++) {
        const ur = a[row + 2 * j]!;
        const ui = a[row + 2 * j + 1]!;
        const xr = a[j * width + c]!;
        const xi = a[j * width + c + 1]!;
        sr -= ur * xr - ui * xi;
        si -= ur * xi + ui * xr;
      }
      const ir = a[row + 2 * i]!;
      const ii = a[row + 2 * i + 1]!;
      a[row + c] = sr * ir - si * ii;
      a[row + c + 1] = sr * ii + si * ir;
    }
  }
}

function smallPivot(a: Float64Array, row: number, n: number): number {
  let largest = 0;
  for (let j = 0; j < 2 * n; j++) largest = Math.max(largest, Math.abs(a[row + j]!));
  return largest > 0 ? largest * 1e-18 : 1e-30;
}

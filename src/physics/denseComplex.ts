/**
 * Small dense complex linear systems A X = F with partial pivoting, real and imaginary parts interleaved.
 *
 * A is n x n, F is n x m; both lie in one row-major array of rows of n + m complex numbers. Elimination overwrites A; X replaces F.
 * `reach[i]` is the last column of A's row i that may differ from zero: what lies beyond is not touched. It is overwritten too.
 * Pivot: the entry of largest |re|^2 + |im|^2 in the column. A pivot of exactly zero (a lossless circuit exactly on resonance)
 * is replaced by 1e-18 of the largest entry of its row in A, so that the answer is very large but finite.
 * Source: Golub and Van Loan, Matrix Computations, sec. 3.4 and, for the reach, 4.3 (banded systems) (from memory).
 */
export function solveDense(a: Float64Array, n: number, m: number, reach: Int32Array): void {
  const width = 2 * (n + m);
  let rowK = 0;
  for (let k = 0; k < n; k++, rowK += width) {
    const column = 2 * k;
    let best = a[rowK + column]! * a[rowK + column]! + a[rowK + column + 1]! * a[rowK + column + 1]!;
    let pivot = k;
    for (let i = k + 1, at = rowK + width + column; i < n; i++, at += width) {
      const size = a[at]! * a[at]! + a[at + 1]! * a[at + 1]!;
      if (size > best) {
        best = size;
        pivot = i;
      }
    }
    if (pivot !== k) swapRows(a, reach, k, pivot, column, width);
    if (best === 0) {
      a[rowK + column] = smallPivot(a, rowK, n);
      best = a[rowK + column]! * a[rowK + column]!;
    }
    const ir = a[rowK + column]! / best;
    const ii = -a[rowK + column + 1]! / best;
    // The pivot's place keeps its reciprocal for the back substitution.
    a[rowK + column] = ir;
    a[rowK + column + 1] = ii;
    const last = rowK + 2 * reach[k]!;
    for (let i = k + 1, row = rowK + width; i < n; i++, row += width) {
      const lr0 = a[row + column]!;
      const li0 = a[row + column + 1]!;
      if (lr0 === 0 && li0 === 0) continue;
      if (reach[i]! < reach[k]!) reach[i] = reach[k]!;
      const lr = lr0 * ir - li0 * ii;
      const li = lr0 * ii + li0 * ir;
      const shift = row - rowK;
      for (let j = rowK + column + 2; j <= last; j += 2) {
        const ur = a[j]!;
        const ui = a[j + 1]!;
        a[j + shift] = a[j + shift]! - (lr * ur - li * ui);
        a[j + shift + 1] = a[j + shift + 1]! - (lr * ui + li * ur);
      }
      for (let j = rowK + 2 * n, end = rowK + width; j < end; j += 2) {
        const ur = a[j]!;
        const ui = a[j + 1]!;
        a[j + shift] = a[j + shift]! - (lr * ur - li * ui);
        a[j + shift + 1] = a[j + shift + 1]! - (lr * ui + li * ur);
      }
    }
  }
  for (let c = 2 * n; c < width; c += 2) {
    for (let i = n - 1, row = (n - 1) * width; i >= 0; i--, row -= width) {
      let sr = a[row + c]!;
      let si = a[row + c + 1]!;
      for (let j = i + 1, x = row + width + c, last = reach[i]!; j <= last; j++, x += width) {
        const ur = a[row + 2 * j]!;
        const ui = a[row + 2 * j + 1]!;
        sr -= ur * a[x]! - ui * a[x + 1]!;
        si -= ur * a[x + 1]! + ui * a[x]!;
      }
      const ir = a[row + 2 * i]!;
      const ii = a[row + 2 * i + 1]!;
      a[row + c] = sr * ir - si * ii;
      a[row + c + 1] = sr * ii + si * ir;
    }
  }
}

function swapRows(a: Float64Array, reach: Int32Array, k: number, pivot: number, column: number, width: number): void {
  const held = reach[k]!;
  reach[k] = reach[pivot]!;
  reach[pivot] = held;
  const shift = (pivot - k) * width;
  for (let j = k * width + column, end = (k + 1) * width; j < end; j++) {
    const t = a[j]!;
    a[j] = a[j + shift]!;
    a[j + shift] = t;
  }
}

function smallPivot(a: Float64Array, row: number, n: number): number {
  let largest = 0;
  for (let j = 0; j < 2 * n; j++) largest = Math.max(largest, Math.abs(a[row + j]!));
  return largest > 0 ? largest * 1e-18 : 1e-30;
}

/** Small real systems of equations, solved in place. */

/**
 * Gaussian elimination with partial pivoting of n rows of n + 1; the answer stands in the last column. False where there is none. Two pivots are taken off in one pass, four rows at a time: each figure is
 * fetched and put back half as often, and has the same taken off it in the same order.
 */
export function eliminate(a: Float64Array, n: number): boolean {
  const width = n + 1;
  const under = n * width;
  for (let k = 0; k < n; k += 2) {
    const row = k * width;
    if (!takePivot(a, width, under, k, k)) return false;
    const p = a[row + k]!;
    if (k + 1 === n) break;
    const first = a[row + k + 1]!;
    // What the first pivot leaves of the second one's column; its multipliers stay in places that have become nothing.
    for (let other = row + width; other < under; other += width) {
      const s = a[other + k]! / p;
      a[other + k] = s;
      a[other + k + 1] = a[other + k + 1]! - s * first;
    }
    const second = row + width;
    if (!takePivot(a, width, under, k + 1, k)) return false;
    const q = a[second + k + 1]!;
    const own = a[second + k]!;
    const end = row + width;
    for (let j = row + k + 2; j < end; j++) a[j + width] = a[j + width]! - own * a[j]!;
    let other = second + width;
    for (; other + 3 * width < under; other += 4 * width) {
      const o1 = other + width;
      const o2 = o1 + width;
      const o3 = o2 + width;
      const s0 = a[other + k]!;
      const s1 = a[o1 + k]!;
      const s2 = a[o2 + k]!;
      const s3 = a[o3 + k]!;
      const t0 = a[other + k + 1]! / q;
      const t1 = a[o1 + k + 1]! / q;
      const t2 = a[o2 + k + 1]! / q;
      const t3 = a[o3 + k + 1]! / q;
      let at = other + k + 2;
      for (let from = row + k + 2; from < end; from++, at++) {
        const f = a[from]!;
        const g = a[from + width]!;
        a[at] = a[at]! - s0 * f - t0 * g;
        a[at + width] = a[at + width]! - s1 * f - t1 * g;
        a[at + 2 * width] = a[at + 2 * width]! - s2 * f - t2 * g;
        a[at + 3 * width] = a[at + 3 * width]! - s3 * f - t3 * g;
      }
    }
    for (; other < under; other += width) {
      const s = a[other + k]!;
      const t = a[other + k + 1]! / q;
      let at = other + k + 2;
      for (let from = row + k + 2; from < end; from++, at++) a[at] = a[at]! - s * a[from]! - t * a[from + width]!;
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

/** Puts the row with the largest figure in column k in the k-th place, from column `from` on; false where all are nothing. */
function takePivot(a: Float64Array, width: number, under: number, k: number, from: number): boolean {
  const row = k * width;
  let best = row;
  let most = Math.abs(a[row + k]!);
  for (let other = row + width; other < under; other += width) {
    const size = Math.abs(a[other + k]!);
    if (size > most) {
      best = other;
      most = size;
    }
  }
  if (!(most > 0)) return false;
  if (best !== row)
    for (let j = from; j < width; j++) {
      const held = a[row + j]!;
      a[row + j] = a[best + j]!;
      a[best + j] = held;
    }
  return true;
}

/** eliminate() for four rows, to the last digit, without its loops: a pair of diodes asks for it at every frequency. Rows change places by their beginnings alone. */
export function eliminateFour(a: Float64Array): boolean {
  let r0 = 0;
  let r1 = 5;
  let r2 = 10;
  let r3 = 15;
  let held = 0;
  const b0 = Math.abs(a[0]!);
  const b1 = Math.abs(a[5]!);
  const b2 = Math.abs(a[10]!);
  const b3 = Math.abs(a[15]!);
  let most = b0;
  if (b1 > most) most = b1;
  if (b2 > most) most = b2;
  if (b3 > most) most = b3;
  if (!(most > 0)) return false;
  if (b0 !== most) {
    if (b1 === most) {
      r0 = 5;
      r1 = 0;
    } else if (b2 === most) {
      r0 = 10;
      r2 = 0;
    } else {
      r0 = 15;
      r3 = 0;
    }
  }
  const p0 = a[r0]!;
  const a1 = a[r0 + 1]!;
  const a2 = a[r0 + 2]!;
  const a3 = a[r0 + 3]!;
  const a4 = a[r0 + 4]!;
  const s1 = a[r1]! / p0;
  const s2 = a[r2]! / p0;
  const s3 = a[r3]! / p0;
  a[r1 + 1] = a[r1 + 1]! - s1 * a1;
  a[r1 + 2] = a[r1 + 2]! - s1 * a2;
  a[r1 + 3] = a[r1 + 3]! - s1 * a3;
  a[r1 + 4] = a[r1 + 4]! - s1 * a4;
  a[r2 + 1] = a[r2 + 1]! - s2 * a1;
  a[r2 + 2] = a[r2 + 2]! - s2 * a2;
  a[r2 + 3] = a[r2 + 3]! - s2 * a3;
  a[r2 + 4] = a[r2 + 4]! - s2 * a4;
  a[r3 + 1] = a[r3 + 1]! - s3 * a1;
  a[r3 + 2] = a[r3 + 2]! - s3 * a2;
  a[r3 + 3] = a[r3 + 3]! - s3 * a3;
  a[r3 + 4] = a[r3 + 4]! - s3 * a4;

  const c1 = Math.abs(a[r1 + 1]!);
  const c2 = Math.abs(a[r2 + 1]!);
  const c3 = Math.abs(a[r3 + 1]!);
  most = c1;
  if (c2 > most) most = c2;
  if (c3 > most) most = c3;
  if (!(most > 0)) return false;
  if (c1 !== most) {
    held = r1;
    if (c2 === most) {
      r1 = r2;
      r2 = held;
    } else {
      r1 = r3;
      r3 = held;
    }
  }
  const p1 = a[r1 + 1]!;
  const e2 = a[r1 + 2]!;
  const e3 = a[r1 + 3]!;
  const e4 = a[r1 + 4]!;
  const t2 = a[r2 + 1]! / p1;
  const t3 = a[r3 + 1]! / p1;
  a[r2 + 2] = a[r2 + 2]! - t2 * e2;
  a[r2 + 3] = a[r2 + 3]! - t2 * e3;
  a[r2 + 4] = a[r2 + 4]! - t2 * e4;
  a[r3 + 2] = a[r3 + 2]! - t3 * e2;
  a[r3 + 3] = a[r3 + 3]! - t3 * e3;
  a[r3 + 4] = a[r3 + 4]! - t3 * e4;

  if (Math.abs(a[r3 + 2]!) > Math.abs(a[r2 + 2]!)) {
    held = r2;
    r2 = r3;
    r3 = held;
  }
  const p2 = a[r2 + 2]!;
  if (!(Math.abs(p2) > 0)) return false;
  const u3 = a[r3 + 2]! / p2;
  const p3 = a[r3 + 3]! - u3 * a[r2 + 3]!;
  if (!(Math.abs(p3) > 0)) return false;
  const z3 = (a[r3 + 4]! - u3 * a[r2 + 4]!) / p3;
  const z2 = (a[r2 + 4]! - a[r2 + 3]! * z3) / p2;
  const z1 = (e4 - e2 * z2 - e3 * z3) / p1;
  a[4] = (a4 - a1 * z1 - a2 * z2 - a3 * z3) / p0;
  a[9] = z1;
  a[14] = z2;
  a[19] = z3;
  return true;
}

/**
 * The same in two halves, for one matrix and several right sides: `factor` does what eliminate() does to the n * n matrix at `from` of `a` and keeps its multipliers in the places that have
 * become nothing; `rows` gets the row that was taken at each step. Returns the steps that were done: n where there is an answer.
 */
export function factor(a: Float64Array, from: number, n: number, rows: Uint8Array, rowsFrom: number): number {
  for (let k = 0; k < n; k++) {
    const row = from + k * n;
    let best = k;
    let most = Math.abs(a[row + k]!);
    for (let other = k + 1; other < n; other++) {
      const size = Math.abs(a[from + other * n + k]!);
      if (size > most) {
        best = other;
        most = size;
      }
    }
    if (!(most > 0)) return k;
    rows[rowsFrom + k] = best;
    if (best !== k) {
      // The multipliers stay: the right side changes places in the same order.
      const to = from + best * n;
      for (let j = k; j < n; j++) {
        const held = a[row + j]!;
        a[row + j] = a[to + j]!;
        a[to + j] = held;
      }
    }
    const pivot = a[row + k]!;
    for (let other = k + 1; other < n; other++) {
      const to = from + other * n;
      const share = a[to + k]! / pivot;
      a[to + k] = share;
      if (share === 0) continue;
      for (let j = k + 1; j < n; j++) a[to + j] = a[to + j]! - share * a[row + j]!;
    }
  }
  return n;
}

/** Puts the answer in the place of the right side `b`; to the last digit what eliminate() gives. */
export function substitute(
  a: Float64Array,
  from: number,
  n: number,
  rows: Uint8Array,
  rowsFrom: number,
  steps: number,
  b: Float64Array,
): void {
  for (let k = 0; k < steps; k++) {
    const best = rows[rowsFrom + k]!;
    const held = b[best]!;
    b[best] = b[k]!;
    b[k] = held;
    for (let other = k + 1; other < n; other++) {
      const share = a[from + other * n + k]!;
      if (share !== 0) b[other] = b[other]! - share * held;
    }
  }
  if (steps < n) return;
  for (let k = n - 1; k >= 0; k--) {
    const row = from + k * n;
    let sum = b[k]!;
    for (let j = k + 1; j < n; j++) sum -= a[row + j]! * b[j]!;
    b[k] = sum / a[row + k]!;
  }
}

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
      if (size > most) {
        best = other;
        most = size;
      }
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
    const under = n * width;
    let other = row + width;
    // Four rows at a time: each figure of the pivot's row is fetched once for all of them.
    for (; other + 3 * width < under; other += 4 * width) {
      const s0 = a[other + k]! / pivot;
      const s1 = a[other + width + k]! / pivot;
      const s2 = a[other + 2 * width + k]! / pivot;
      const s3 = a[other + 3 * width + k]! / pivot;
      if (s0 === 0 || s1 === 0 || s2 === 0 || s3 === 0) {
        takeOff(a, row + k + 1, end, other + k + 1, s0);
        takeOff(a, row + k + 1, end, other + width + k + 1, s1);
        takeOff(a, row + k + 1, end, other + 2 * width + k + 1, s2);
        takeOff(a, row + k + 1, end, other + 3 * width + k + 1, s3);
        continue;
      }
      let t0 = other + k + 1;
      let t1 = t0 + width;
      let t2 = t1 + width;
      let t3 = t2 + width;
      for (let from = row + k + 1; from < end; from++, t0++, t1++, t2++, t3++) {
        const figure = a[from]!;
        a[t0] = a[t0]! - s0 * figure;
        a[t1] = a[t1]! - s1 * figure;
        a[t2] = a[t2]! - s2 * figure;
        a[t3] = a[t3]! - s3 * figure;
      }
    }
    for (; other < under; other += width) takeOff(a, row + k + 1, end, other + k + 1, a[other + k]! / pivot);
  }
  for (let k = n - 1; k >= 0; k--) {
    const row = k * width;
    let sum = a[row + n]!;
    for (let j = k + 1, at = (k + 1) * width + n; j < n; j++, at += width) sum -= a[row + j]! * a[at]!;
    a[row + n] = sum / a[row + k]!;
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

/** Takes a share of the figures from `from` to `end` off those that begin at `to`. */
function takeOff(a: Float64Array, from: number, end: number, to: number, share: number): void {
  if (share === 0) return;
  for (let at = from, off = to; at < end; at++, off++) a[off] = a[off]! - share * a[at]!;
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

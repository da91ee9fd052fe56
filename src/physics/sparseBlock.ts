/**
 * A block's responses by elimination along its own pattern: one order of pivots for all frequencies, chosen beforehand, and nothing done where a place holds zero.
 *
 * The pivots stay on the diagonal, in the order of least degree (Tinney and Walker's second scheme; George and Liu, Computer Solution of Large Sparse Positive
 * Definite Systems, ch. 5; from memory). No row changes places, so a diagonal that happens to be small, a circuit at its resonance, could cost digits: wherever a
 * multiplier grows beyond MOST_MULTIPLIER, the frequency is named to the caller, who solves it with partial pivoting (denseComplex.ts). Multipliers count as if rows and
 * columns were scaled by what stands at their node at the middle frequency without regard to sign, so that a node of high impedance beside one of low does no harm.
 */

export interface SparsePlan {
  readonly n: number;
  /** by place of the row-major n * n matrix: where its values stand in the work arrays, -1 where it is and stays zero */
  readonly slot: Int32Array;
  readonly slots: number;
  /** places that hold something before elimination */
  readonly filled: Int32Array;
  readonly order: Int32Array;
}

/** Larger ones lose digits: at each pivot the entries may grow by as much. */
const MOST_MULTIPLIER = 10;
/** Frequencies worked on together: few enough for the nearest cache. */
const AT_ONCE = 128;

/** The last few, newest first: a block keeps its pattern while its values change, and few blocks take turns. */
const lately: { readonly n: number; readonly pattern: Uint8Array; readonly plan: SparsePlan }[] = [];
const MOST_LATELY = 16;

/** `holds` tells of each place of the row-major n * n matrix whether it differs from zero. */
export function sparsePlan(n: number, holds: (at: number) => boolean): SparsePlan {
  const pattern = new Uint8Array(n * n);
  for (let at = 0; at < n * n; at++) pattern[at] = holds(at) ? 1 : 0;
  const at = lately.findIndex((one) => one.n === n && alike(one.pattern, pattern));
  const found = lately[at] ?? { n, pattern, plan: freshPlan(n, pattern) };
  if (at !== 0) {
    if (at > 0) lately.splice(at, 1);
    lately.unshift(found);
    lately.length = Math.min(lately.length, MOST_LATELY);
  }
  return found.plan;
}

function alike(a: Uint8Array, b: Uint8Array): boolean {
  for (let at = 0; at < a.length; at++) if (a[at] !== b[at]) return false;
  return true;
}

function freshPlan(n: number, pattern: Uint8Array): SparsePlan {
  const joined = new Uint8Array(n * n);
  const filled: number[] = [];
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      if (pattern[i * n + j] === 1) filled.push(i * n + j);
      if (i === j || pattern[i * n + j] === 1 || pattern[j * n + i] === 1) joined[i * n + j] = 1;
    }
  }
  const order = leastDegree(n, joined);
  const slot = new Int32Array(n * n).fill(-1);
  let slots = 0;
  for (let at = 0; at < n * n; at++) if (joined[at] === 1) slot[at] = slots++;
  return { n, slot, slots, filled: Int32Array.from(filled), order };
}

/** Puts in `joined` what elimination fills in, and gives the order of the pivots. */
function leastDegree(n: number, joined: Uint8Array): Int32Array {
  const order = new Int32Array(n);
  const left = new Set(Array.from({ length: n }, (_, i) => i));
  for (let step = 0; step < n; step++) {
    let best = -1;
    let least = n + 1;
    for (const i of left) {
      let degree = 0;
      for (const j of left) degree += joined[i * n + j]!;
      if (degree < least) {
        best = i;
        least = degree;
      }
    }
    order[step] = best;
    left.delete(best);
    for (const i of left) {
      if (joined[i * n + best] === 0) continue;
      for (const j of left) if (joined[best * n + j] === 1) joined[i * n + j] = 1;
    }
  }
  return order;
}

interface SparseWork {
  re: Float64Array<ArrayBuffer>;
  im: Float64Array<ArrayBuffer>;
  pivotRe: Float64Array<ArrayBuffer>;
  pivotIm: Float64Array<ArrayBuffer>;
  readonly lost: Uint8Array;
}

/** Nothing in it outlives a call of solveSparse(), so that all blocks share it. */
const WORK: SparseWork = {
  re: new Float64Array(0),
  im: new Float64Array(0),
  pivotRe: new Float64Array(0),
  pivotIm: new Float64Array(0),
  lost: new Uint8Array(AT_ONCE),
};

function workFor({ n, slots }: SparsePlan): SparseWork {
  if (WORK.re.length < slots * AT_ONCE) {
    WORK.re = new Float64Array(slots * AT_ONCE);
    WORK.im = new Float64Array(slots * AT_ONCE);
  }
  if (WORK.pivotRe.length < n * AT_ONCE) {
    WORK.pivotRe = new Float64Array(n * AT_ONCE);
    WORK.pivotIm = new Float64Array(n * AT_ONCE);
  }
  return WORK;
}

/**
 * Solves (G + j (w C - B / w)) x = a for each of `columns` real right-hand sides; `amps[p * n + i]` is what enters row i. x of row i, column p, frequency f goes to
 * (p * n + i) * hz.length + f of `outRe` and `outIm`. `lost(f)` is called for each frequency whose digits may be lost, when all the others of its lot stand.
 */
export function solveSparse(
  plan: SparsePlan,
  { g, c, b }: { readonly g: Float64Array; readonly c: Float64Array; readonly b: Float64Array },
  amps: Float64Array,
  columns: number,
  hz: Float64Array,
  outRe: Float64Array,
  outIm: Float64Array,
  lost: (f: number) => void,
): void {
  const { n, slot, slots, filled, order } = plan;
  const count = hz.length;
  const work = workFor(plan);
  const { re, im, pivotRe, pivotIm } = work;
  // A carrier that stands is a single frequency.
  const lot = Math.min(AT_ONCE, count);
  const entered = new Uint8Array(n);
  const middle = 2 * Math.PI * hz[count >> 1]!;
  const standing = Float64Array.from({ length: n }, (_, i) => {
    const at = i * n + i;
    return Math.abs(g[at]!) + Math.abs(middle * c[at]!) + Math.abs(b[at]! / middle);
  });
  for (let first = 0; first < count; first += lot) {
    const many = Math.min(lot, count - first);
    re.fill(0, 0, slots * lot);
    im.fill(0, 0, slots * lot);
    work.lost.fill(0);
    for (const at of filled) fill(re, im, slot[at]! * lot, g[at]!, c[at]!, b[at]!, hz, first, many);
    for (let p = 0; p < columns; p++) {
      for (let i = 0; i < n; i++) {
        const from = (p * n + i) * count + first;
        outRe.fill(amps[p * n + i]!, from, from + many);
        outIm.fill(0, from, from + many);
      }
    }
    for (let step = 0; step < n; step++) {
      const k = order[step]!;
      const own = k * lot;
      reciprocal(re, im, slot[k * n + k]! * lot, pivotRe, pivotIm, own, many, work.lost);
      for (let below = step + 1; below < n; below++) {
        const i = order[below]!;
        if (slot[i * n + k]! < 0) continue;
        const multiplier = slot[i * n + k]! * lot;
        const most = (MOST_MULTIPLIER * MOST_MULTIPLIER * standing[i]!) / standing[k]!;
        scale(re, im, multiplier, pivotRe, pivotIm, own, many);
        mark(re, im, multiplier, most, many, work.lost);
        for (let right = step + 1; right < n; right++) {
          const j = order[right]!;
          if (slot[k * n + j]! < 0) continue;
          subtract(re, im, slot[i * n + j]! * lot, re, im, multiplier, re, im, slot[k * n + j]! * lot, many);
        }
      }
    }
    for (let p = 0; p < columns; p++) {
      const column = (i: number): number => (p * n + i) * count + first;
      for (let i = 0; i < n; i++) entered[i] = amps[p * n + i] === 0 ? 0 : 1;
      for (let step = 0; step < n; step++) {
        const k = order[step]!;
        if (entered[k] === 0) continue;
        for (let below = step + 1; below < n; below++) {
          const i = order[below]!;
          if (slot[i * n + k]! < 0) continue;
          entered[i] = 1;
          subtract(outRe, outIm, column(i), re, im, slot[i * n + k]! * lot, outRe, outIm, column(k), many);
        }
      }
      for (let step = n - 1; step >= 0; step--) {
        const k = order[step]!;
        for (let right = step + 1; right < n; right++) {
          const j = order[right]!;
          if (slot[k * n + j]! < 0) continue;
          subtract(outRe, outIm, column(k), re, im, slot[k * n + j]! * lot, outRe, outIm, column(j), many);
        }
        scale(outRe, outIm, column(k), pivotRe, pivotIm, k * lot, many);
      }
    }
    for (let f = 0; f < many; f++) if (work.lost[f] === 1) lost(first + f);
  }
}

function fill(
  re: Float64Array,
  im: Float64Array,
  to: number,
  g: number,
  c: number,
  b: number,
  hz: Float64Array,
  first: number,
  many: number,
): void {
  if (g !== 0) re.fill(g, to, to + many);
  // Most places hold a capacitor or a coil alone; the imaginary part is zero so far.
  if (b !== 0) {
    for (let f = 0; f < many; f++) {
      const w = 2 * Math.PI * hz[first + f]!;
      im[to + f] = w * c - b / w;
    }
  } else if (c !== 0) for (let f = 0; f < many; f++) im[to + f] = 2 * Math.PI * hz[first + f]! * c;
}

function reciprocal(
  re: Float64Array,
  im: Float64Array,
  from: number,
  outRe: Float64Array,
  outIm: Float64Array,
  to: number,
  many: number,
  lost: Uint8Array,
): void {
  for (let f = 0; f < many; f++) {
    const r = re[from + f]!;
    const i = im[from + f]!;
    const size = r * r + i * i;
    if (!(size > 0)) lost[f] = 1;
    const scaled = 1 / size;
    outRe[to + f] = r * scaled;
    outIm[to + f] = -i * scaled;
  }
}

/** Names the frequencies where a is larger than the square root of `most`, or no number. */
function mark(re: Float64Array, im: Float64Array, a: number, most: number, many: number, lost: Uint8Array): void {
  for (let f = 0; f < many; f++) {
    const r = re[a + f]!;
    const i = im[a + f]!;
    if (!(r * r + i * i <= most)) lost[f] = 1;
  }
}

/** a = a * s */
function scale(
  re: Float64Array,
  im: Float64Array,
  a: number,
  sRe: Float64Array,
  sIm: Float64Array,
  s: number,
  many: number,
): void {
  for (let f = 0; f < many; f++) {
    const ar = re[a + f]!;
    const ai = im[a + f]!;
    const sr = sRe[s + f]!;
    const si = sIm[s + f]!;
    re[a + f] = ar * sr - ai * si;
    im[a + f] = ar * si + ai * sr;
  }
}

/** a = a - l * u */
function subtract(
  aRe: Float64Array,
  aIm: Float64Array,
  a: number,
  lRe: Float64Array,
  lIm: Float64Array,
  l: number,
  uRe: Float64Array,
  uIm: Float64Array,
  u: number,
  many: number,
): void {
  for (let f = 0; f < many; f++) {
    const lr = lRe[l + f]!;
    const li = lIm[l + f]!;
    const ur = uRe[u + f]!;
    const ui = uIm[u + f]!;
    aRe[a + f] = aRe[a + f]! - (lr * ur - li * ui);
    aIm[a + f] = aIm[a + f]! - (lr * ui + li * ur);
  }
}

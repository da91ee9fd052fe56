/**
 * A block's voltages for one amp into each of its input places, at every frequency: the inner loop of the solver.
 *
 * Y(w) = G + j (w C - B / w). Blocks of one and two nodes are written out (with the same pivoting); larger ones go through solveSparse,
 * and frequencies that it gives up through solveDense. Nothing is allocated in the loops. A lossless circuit struck exactly on resonance gets 1e18 ohm instead of infinity.
 */

import { solveDense } from './denseComplex.ts';
import { solveSparse, sparsePlan } from './sparseBlock.ts';
import type { InputPlace } from './system.ts';

export interface BlockMatrices {
  /** row-major, n * n: siemens, farad, 1/henry */
  readonly g: Float64Array;
  readonly c: Float64Array;
  readonly b: Float64Array;
}

/** Response of local node i to place p at frequency f stands at (p * n + i) * hz.length + f of `re` and `im`. */
export function unitResponse(
  matrices: BlockMatrices,
  n: number,
  places: readonly InputPlace[],
  hz: Float64Array,
  work: Float64Array,
  re: Float64Array,
  im: Float64Array,
): void {
  if (n === 1) oneNode(matrices, places, hz, re, im);
  else if (n === 2) twoNodes(matrices, places, hz, re, im);
  else manyNodes(matrices, n, places, hz, work, re, im);
}

const RUNAWAY_OHMS = 1e18;

/** The current that one amp at a place brings into local node i. */
function entering(place: InputPlace, i: number): number {
  return (i === place.minus ? 1 : 0) - (i === place.plus ? 1 : 0);
}

function oneNode(
  { g, c, b }: BlockMatrices,
  places: readonly InputPlace[],
  hz: Float64Array,
  re: Float64Array,
  im: Float64Array,
): void {
  const count = hz.length;
  const gr = g[0]!;
  const c0 = c[0]!;
  const b0 = b[0]!;
  for (let p = 0; p < places.length; p++) {
    const amps = entering(places[p]!, 0);
    for (let f = 0; f < count; f++) {
      const w = 2 * Math.PI * hz[f]!;
      const y = w * c0 - b0 / w;
      const size = gr * gr + y * y;
      const scale = size > 0 ? amps / size : 0;
      re[p * count + f] = size > 0 ? gr * scale : amps * RUNAWAY_OHMS;
      im[p * count + f] = -y * scale;
    }
  }
}

function twoNodes(
  { g, c, b }: BlockMatrices,
  places: readonly InputPlace[],
  hz: Float64Array,
  re: Float64Array,
  im: Float64Array,
): void {
  const count = hz.length;
  const [g00, g01, g10, g11] = [g[0]!, g[1]!, g[2]!, g[3]!];
  const [c00, c01, c10, c11] = [c[0]!, c[1]!, c[2]!, c[3]!];
  const [b00, b01, b10, b11] = [b[0]!, b[1]!, b[2]!, b[3]!];
  for (let p = 0; p < places.length; p++) {
    const f0 = entering(places[p]!, 0);
    const f1 = entering(places[p]!, 1);
    const first = 2 * p * count;
    const second = first + count;
    for (let f = 0; f < count; f++) {
      const w = 2 * Math.PI * hz[f]!;
      const perW = 1 / w;
      const y00 = w * c00 - perW * b00;
      const y01 = w * c01 - perW * b01;
      const y10 = w * c10 - perW * b10;
      const y11 = w * c11 - perW * b11;
      const size0 = g00 * g00 + y00 * y00;
      const size1 = g10 * g10 + y10 * y10;
      // Rows change places so that the larger entry of the first column is the pivot.
      const kept = size0 >= size1;
      const size = kept ? size0 : size1;
      const pr = (kept ? g00 : g10) / size;
      const pi = -(kept ? y00 : y10) / size;
      const ur = kept ? g01 : g11;
      const ui = kept ? y01 : y11;
      const lr0 = kept ? g10 : g00;
      const li0 = kept ? y10 : y00;
      const lr = lr0 * pr - li0 * pi;
      const li = lr0 * pi + li0 * pr;
      const dr = (kept ? g11 : g01) - (lr * ur - li * ui);
      const di = (kept ? y11 : y01) - (lr * ui + li * ur);
      const top = kept ? f0 : f1;
      const rr = (kept ? f1 : f0) - lr * top;
      const ri = -li * top;
      const last = dr * dr + di * di;
      if (last === 0 || size === 0) {
        re[first + f] = f0 * RUNAWAY_OHMS;
        re[second + f] = f1 * RUNAWAY_OHMS;
        im[first + f] = 0;
        im[second + f] = 0;
        continue;
      }
      const xr = (rr * dr + ri * di) / last;
      const xi = (ri * dr - rr * di) / last;
      const sr = top - (ur * xr - ui * xi);
      const si = -(ur * xi + ui * xr);
      re[second + f] = xr;
      im[second + f] = xi;
      re[first + f] = sr * pr - si * pi;
      im[first + f] = sr * pi + si * pr;
    }
  }
}

function manyNodes(
  matrices: BlockMatrices,
  n: number,
  places: readonly InputPlace[],
  hz: Float64Array,
  work: Float64Array,
  re: Float64Array,
  im: Float64Array,
): void {
  const { g, c, b } = matrices;
  const m = places.length;
  const amps = new Float64Array(n * m);
  for (let p = 0; p < m; p++) for (let i = 0; i < n; i++) amps[p * n + i] = entering(places[p]!, i);
  const holds = (at: number): boolean => g[at] !== 0 || c[at] !== 0 || b[at] !== 0;
  const plan = sparsePlan(n, holds);
  const reach = rowReach(n, holds);
  const working = new Int32Array(n);
  solveSparse(plan, matrices, amps, m, hz, re, im, (f) => {
    working.set(reach);
    oneFrequency(matrices, n, amps, f, hz, work, working, re, im);
  });
}

/** One frequency with partial pivoting. */
function oneFrequency(
  { g, c, b }: BlockMatrices,
  n: number,
  amps: Float64Array,
  f: number,
  hz: Float64Array,
  work: Float64Array,
  working: Int32Array,
  re: Float64Array,
  im: Float64Array,
): void {
  const count = hz.length;
  const m = amps.length / n;
  const width = 2 * (n + m);
  const w = 2 * Math.PI * hz[f]!;
  let at = 0;
  let from = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++, at += 2, from++) {
      work[at] = g[from]!;
      work[at + 1] = w * c[from]! - b[from]! / w;
    }
    for (let p = 0; p < m; p++, at += 2) {
      work[at] = amps[p * n + i]!;
      work[at + 1] = 0;
    }
  }
  solveDense(work, n, m, working);
  for (let i = 0; i < n; i++) {
    for (let p = 0; p < m; p++) {
      const x = i * width + 2 * (n + p);
      re[(p * n + i) * count + f] = work[x]!;
      im[(p * n + i) * count + f] = work[x + 1]!;
    }
  }
}

/** Last column of each row that may differ from zero; `holds` tells of each place of a row-major n * n matrix. */
function rowReach(n: number, holds: (at: number) => boolean): Int32Array {
  return Int32Array.from({ length: n }, (_, i) => {
    let last = n - 1;
    while (last > i && !holds(i * n + last)) last--;
    return last;
  });
}

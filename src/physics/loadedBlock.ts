/** What the loads of one block work on, and what their currents make of it (blockLoads.ts). Nothing is allocated in the loops. */
import { substitute } from './eliminate.ts';

/** What a block's loads work on. Response of node i to the load in column c at frequency f: [(c * n + i) * count + f]. */
export interface LoadedBlock {
  readonly n: number;
  readonly count: number;
  /** the frequencies */
  readonly hz: Float64Array;
  /** by local node */
  readonly re: readonly Float64Array[];
  readonly im: readonly Float64Array[];
  readonly unitRe: Float64Array;
  readonly unitIm: Float64Array;
}

/** By frequency: 1 - U dI/dV taken apart by factor(), and each load's admittance with its slopes. */
export interface FollowedLaw {
  readonly matrices: Float64Array;
  readonly rows: Uint8Array;
  readonly steps: Uint8Array;
  readonly y: Float64Array;
}

/** What one load draws for the changes of `block`: substitute() of two rows written out, to the same digits. */
export function followOne(
  node: number,
  { matrices, rows, steps, y: bend }: FollowedLaw,
  block: LoadedBlock,
  at: LoadedBlock,
  drawnRe: Float64Array,
  drawnIm: Float64Array,
): void {
  const changeRe = block.re[node]!;
  const changeIm = block.im[node]!;
  const atRe = at.re[node]!;
  const atIm = at.im[node]!;
  for (let f = 0; f < block.count; f++) {
    const from = 4 * f;
    let dx = changeRe[f]!;
    let dz = changeIm[f]!;
    if (steps[f]! > 0) {
      if (rows[2 * f] === 1) {
        const held = dz;
        dz = dx;
        dx = held;
      }
      const share = matrices[from + 2]!;
      if (share !== 0) dz -= share * dx;
      if (steps[f] === 2) {
        dz /= matrices[from + 3]!;
        dx = (dx - matrices[from + 1]! * dz) / matrices[from]!;
      }
    }
    const x = atRe[f]!;
    const z = atIm[f]!;
    const g = bend[from]!;
    const b = bend[from + 1]!;
    const dg = bend[from + 2]!;
    const db = bend[from + 3]!;
    const a = Math.sqrt(x * x + z * z);
    const da = a > 0 ? (x * dx + z * dz) / a : 0;
    drawnRe[f] = g * dx - b * dz + (dg * x - db * z) * da;
    drawnIm[f] = g * dz + b * dx + (dg * z + db * x) * da;
  }
}

/** The same of several loads, one after the other in the places of `drawnRe` and `drawnIm`; `bare` is room for their voltages. */
export function followMany(
  nodes: Int32Array,
  law: FollowedLaw,
  block: LoadedBlock,
  at: LoadedBlock,
  bare: Float64Array,
  drawnRe: Float64Array,
  drawnIm: Float64Array,
): void {
  const { count } = block;
  const m = nodes.length;
  const size = 2 * m;
  for (let f = 0; f < count; f++) {
    for (let k = 0; k < m; k++) {
      bare[2 * k] = block.re[nodes[k]!]![f]!;
      bare[2 * k + 1] = block.im[nodes[k]!]![f]!;
    }
    substitute(law.matrices, f * size * size, size, law.rows, f * size, law.steps[f]!, bare);
    for (let k = 0; k < m; k++) {
      const x = at.re[nodes[k]!]![f]!;
      const z = at.im[nodes[k]!]![f]!;
      const dx = bare[2 * k]!;
      const dz = bare[2 * k + 1]!;
      const from = 4 * (f * m + k);
      const g = law.y[from]!;
      const b = law.y[from + 1]!;
      const dg = law.y[from + 2]!;
      const db = law.y[from + 3]!;
      const a = Math.sqrt(x * x + z * z);
      const da = a > 0 ? (x * dx + z * dz) / a : 0;
      drawnRe[k * count + f] = g * dx - b * dz + (dg * x - db * z) * da;
      drawnIm[k * count + f] = g * dz + b * dx + (dg * z + db * x) * da;
    }
  }
}

export const allOf = ({ n }: LoadedBlock): Int32Array => Int32Array.from({ length: n }, (_, i) => i);

/** Adds what one load's current, from place `first` on, makes at local nodes of the block. */
export function addDrawn(
  { n, count, re, im, unitRe, unitIm }: LoadedBlock,
  column: number,
  drawnRe: Float64Array,
  drawnIm: Float64Array,
  first: number,
  locals: ArrayLike<number>,
): void {
  for (let k = 0; k < locals.length; k++) {
    const i = locals[k]!;
    const outRe = re[i]!;
    const outIm = im[i]!;
    const at = (column * n + i) * count;
    for (let f = 0; f < count; f++) {
      const ur = unitRe[at + f]!;
      const ui = unitIm[at + f]!;
      const ir = drawnRe[first + f]!;
      const ii = drawnIm[first + f]!;
      outRe[f] = outRe[f]! + ur * ir - ui * ii;
      outIm[f] = outIm[f]! + ur * ii + ui * ir;
    }
  }
}

/**
 * Lines that are straight in the slugs: the step inside a box whose highest line is least.
 *
 * The linear program  least t with r_i + J_i d <= t,  d in the box,  by the simplex method with bounds on the unknowns (Dantzig, Linear Programming and Extensions, 1963; from memory). It begins
 * at the low corner of the box, on the line that is highest there; some tens of exchanges for a sheet.
 */
import type { Residuals, SearchBox } from './leastSquares.ts';

const MOST_EXCHANGES = 200;
/** A slope of less than this moves nothing. */
const LEAST_SLOPE = 1e-9;
const LEAST_PIVOT = 1e-11;

/** `d` in the unit of the box, `worst` the highest line there, in the unit of `r`. */
export function leastTop(
  { r, jacobian }: Residuals,
  { low, high }: SearchBox,
): { readonly d: Float64Array; readonly worst: number } {
  const n = low.length;
  const lines = r.length;
  const wide = n + 1;
  const span = low.map((v, j) => high[j]! - v);
  const linesAt = (d: ArrayLike<number>): Float64Array =>
    r.map((v, i) => {
      let sum = v;
      for (let j = 0; j < n; j++) sum += jacobian[i * n + j]! * d[j]!;
      return sum;
    });
  const corner = linesAt(low);
  const top = corner.reduce((best, v, i) => (v > corner[best]! ? i : best), 0);

  // Row by row how what stands there moves with what is free: distances from the low corner (0 to n - 1) and slacks of lines (n and up); the last row is t.
  const table = new Float64Array((lines + 1) * wide);
  const stands = new Float64Array(lines + 1);
  for (let i = 0; i <= lines; i++) {
    if (i === top) continue;
    stands[i] = corner[top]! - (i < lines ? corner[i]! : 0);
    for (let j = 0; j < n; j++) table[i * wide + j] = jacobian[top * n + j]! - (i < lines ? jacobian[i * n + j]! : 0);
    table[i * wide + n] = 1;
  }
  const NONE = -1;
  const held = Int32Array.from({ length: lines }, (_, i) => (i === top ? NONE : n + i));
  const free = Int32Array.from({ length: wide }, (_, j) => (j < n ? j : n + top));
  const atHigh = new Uint8Array(n + lines);
  const most = (unknown: number): number => (unknown < n ? span[unknown]! : Number.POSITIVE_INFINITY);

  for (let exchange = 0; exchange < MOST_EXCHANGES; exchange++) {
    let enters = NONE;
    let steepest = LEAST_SLOPE;
    for (let k = 0; k < wide; k++) {
      const unknown = free[k]!;
      const fall = (atHigh[unknown] === 1 ? 1 : -1) * table[lines * wide + k]!;
      if (most(unknown) <= 0 || fall <= steepest) continue;
      steepest = fall;
      enters = k;
    }
    if (enters === NONE) break;
    const entering = free[enters]!;
    const way = atHigh[entering] === 1 ? -1 : 1;
    let step = most(entering);
    let leaves = NONE;
    let toHigh = 0;
    for (let i = 0; i < lines; i++) {
      if (held[i] === NONE) continue;
      const slope = way * table[i * wide + enters]!;
      if (Math.abs(slope) < LEAST_PIVOT) continue;
      const room = slope < 0 ? stands[i]! : most(held[i]!) - stands[i]!;
      const far = Math.max(room, 0) / Math.abs(slope);
      if (far >= step) continue;
      step = far;
      leaves = i;
      toHigh = slope > 0 ? 1 : 0;
    }
    if (step === Number.POSITIVE_INFINITY) break;
    for (let i = 0; i <= lines; i++) stands[i] = stands[i]! + way * step * table[i * wide + enters]!;
    if (leaves === NONE) {
      atHigh[entering] = way === 1 ? 1 : 0;
      continue;
    }
    const row = leaves * wide;
    const pivot = table[row + enters]!;
    for (let k = 0; k < wide; k++) table[row + k] = k === enters ? 1 / pivot : -table[row + k]! / pivot;
    for (let i = 0; i <= lines; i++) {
      const share = table[i * wide + enters]!;
      if (i === leaves || share === 0) continue;
      for (let k = 0; k < wide; k++)
        table[i * wide + k] = (k === enters ? 0 : table[i * wide + k]!) + share * table[row + k]!;
    }
    stands[leaves] = (way === 1 ? 0 : most(entering)) + way * step;
    free[enters] = held[leaves]!;
    atHigh[held[leaves]!] = toHigh;
    held[leaves] = entering;
    atHigh[entering] = 0;
  }

  const d = Float64Array.from(low);
  for (const unknown of free) if (unknown < n && atHigh[unknown] === 1) d[unknown] = high[unknown]!;
  for (const [i, unknown] of held.entries())
    if (unknown !== NONE && unknown < n)
      d[unknown] = Math.min(Math.max(low[unknown]! + stands[i]!, low[unknown]!), high[unknown]!);
  return { d, worst: linesAt(d).reduce((highest, v) => Math.max(highest, v), Number.NEGATIVE_INFINITY) };
}

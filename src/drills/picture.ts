/** What the tube shows of a scene, read in divisions: the way out of the sweep as heights over the middle line, place by place. */
import { type Bench, createBench } from '../bench/bench.ts';
import type { BenchDisplay } from '../bench/display.ts';
import type { BenchSetup } from '../bench/setup.ts';
import type { Scene } from './drill.ts';

/** Heights at places from the left edge of the graticule to the right, divisions. */
export type Heights = Float64Array;

export const PLACES = 201;
/** Of the graticule. */
export const HALF_WIDTH_DIV = 5;

const benches = new WeakMap<BenchSetup, Bench>();

/** One bench for each set-up, with all that it has worked out. */
export function benchOf(setup: BenchSetup): Bench {
  const made = benches.get(setup) ?? createBench(setup);
  benches.set(setup, made);
  return made;
}

/** Its beam is written anew by the next picture of the same set-up. */
export const displayOf = ({ setup, state }: Scene): BenchDisplay => benchOf(setup).display(state);

/** The way out as it is drawn, pips and noise and all. */
export function scenePicture(scene: Scene): Heights {
  const { data, count } = displayOf(scene).beam;
  const sums = new Float64Array(PLACES);
  const counts = new Float64Array(PLACES);
  for (let i = 0; i < count / 2; i++) {
    const at = Math.round(((data[3 * i]! + HALF_WIDTH_DIV) / (2 * HALF_WIDTH_DIV)) * (PLACES - 1));
    if (at < 0 || at >= PLACES) continue;
    sums[at] = sums[at]! + data[3 * i + 1]!;
    counts[at] = counts[at]! + 1;
  }
  let last = 0;
  return sums.map((sum, i) => {
    if (counts[i]! > 0) last = sum / counts[i]!;
    return last;
  });
}

export function heightsOf(picture: Heights): { readonly low: number; readonly high: number } {
  return { low: Math.min(...picture), high: Math.max(...picture) };
}

/** How far two pictures lie apart where they do most, divisions. */
export function apartDiv(a: Heights, b: Heights): number {
  return a.reduce((most, height, i) => Math.max(most, Math.abs(height - b[i]!)), 0);
}

/** Root of the mean square of the same. */
export function meanApartDiv(a: Heights, b: Heights): number {
  return Math.sqrt(a.reduce((sum, height, i) => sum + (height - b[i]!) ** 2, 0) / a.length);
}

/** Where the middle of the area under the curve stands, divisions from the middle of the face. */
export function middleDiv(picture: Heights): number {
  const { low } = heightsOf(picture);
  let area = 0;
  let moment = 0;
  picture.forEach((height, i) => {
    area += height - low;
    moment += (height - low) * placeDiv(i);
  });
  return area > 0 ? moment / area : 0;
}

/** Of a place by its number. */
export const placeDiv = (at: number): number => (at / (PLACES - 1) - 0.5) * 2 * HALF_WIDTH_DIV;

/** Divisions upwards to a division across, over the neighbours of a place. */
export function slopeAt(picture: Heights, at: number): number {
  const [a, b] = [Math.max(0, at - 1), Math.min(PLACES - 1, at + 2)];
  return (picture[b]! - picture[a]!) / (placeDiv(b) - placeDiv(a));
}

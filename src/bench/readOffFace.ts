/** How a person reads the tube, for the witness of a finding: heights and places off the beam, each with the room that a reading has. */
import type { BenchState } from './benchState.ts';
import type { BenchDisplay, MarkerTag } from './display.ts';
import { HALF_HEIGHT_DIV, HALF_WIDTH_DIV } from './instruments.ts';

/** Between which figures a reading fits. */
export interface Reach {
  readonly low: number;
  readonly high: number;
}

/** How accurately a height or a distance is read off the graticule: a quarter of a division, and four per cent of what is read. */
export const READ_WITHIN_DIV = 0.25;
const READ_WITHIN_SHARE = 0.04;

/** Pips on the trace, from the left; the tunable marker's and a comb's count like any other. */
export function pipsInView({ tags }: BenchDisplay): readonly MarkerTag[] {
  return tags.filter(({ xDiv }) => xDiv !== null && Math.abs(xDiv) <= HALF_WIDTH_DIV).sort((a, b) => a.xDiv! - b.xDiv!);
}

export function middlePip(display: BenchDisplay): MarkerTag | null {
  return pipsInView(display).reduce<MarkerTag | null>(
    (best, tag) => (best === null || Math.abs(tag.xDiv!) < Math.abs(best.xDiv!) ? tag : best),
    null,
  );
}

export function near(value: number, to = value): Reach {
  const low = Math.min(value, to);
  const high = Math.max(value, to);
  const room = READ_WITHIN_DIV + READ_WITHIN_SHARE * high;
  return { low: low - room, high: high + room };
}

/** How far to either side a place is read. */
const PLACE_WITHIN_DIV = 0.1;
const SWEEPS = 4;

/** Heights above the base line within a place; null where the trace is off the face there. */
export function heightNear({ beam }: BenchDisplay, { controls }: BenchState, xDiv: number): Reach | null {
  const half = beam.count / 2;
  const heights: number[] = [];
  const back: number[] = [];
  for (let i = 0; i < beam.count; i++) {
    const x = beam.data[3 * i]!;
    const y = beam.data[3 * i + 1]!;
    if (i >= half) back.push(y);
    else if (Math.abs(x - xDiv) <= PLACE_WITHIN_DIV) heights.push(y);
  }
  if (heights.length === 0) return null;
  const base = controls.blanking ? middleOf(back) : controls.yPositionDiv;
  const sorted = new Float64Array(heights).sort();
  // Noise strays to either side of the line: what lies between a sixth and five sixths is the line.
  const low = sorted[Math.floor(sorted.length / SWEEPS / 1.5)]!;
  const high = sorted[sorted.length - 1 - Math.floor(sorted.length / SWEEPS / 1.5)]!;
  if (Math.abs(low) > HALF_HEIGHT_DIV || Math.abs(high) > HALF_HEIGHT_DIV) return null;
  return near(Math.abs(low - base), Math.abs(high - base));
}

/** From the lowest place or the base line to the highest, noise and pips smoothed away. */
export function tall({ beam }: BenchDisplay, { controls }: BenchState): number {
  const half = beam.count / 2;
  const places = new Map<number, number[]>();
  const back: number[] = [];
  for (let i = 0; i < beam.count; i++) {
    const x = beam.data[3 * i]!;
    const y = beam.data[3 * i + 1]!;
    if (i >= half) back.push(y);
    else if (Math.abs(x) <= HALF_WIDTH_DIV) {
      const place = Math.round(x / PLACE_WITHIN_DIV);
      const held = places.get(place);
      if (held === undefined) places.set(place, [y]);
      else held.push(y);
    }
  }
  const heights = [...places.values()].map(middleOf);
  const base = controls.blanking ? middleOf(back) : controls.yPositionDiv;
  const onFace = (y: number): number => Math.max(-HALF_HEIGHT_DIV, Math.min(HALF_HEIGHT_DIV, y));
  return Math.max(...heights.map(onFace), onFace(base)) - Math.min(...heights.map(onFace), onFace(base));
}

function middleOf(values: readonly number[]): number {
  return new Float64Array(values).sort()[Math.floor(values.length / 2)] ?? 0;
}

/** What stands on the tube as rows of figures, for those who do not see it: as an eye reads it off the graticule, place by place, and no more than that. */
import type { BenchDisplay } from '../bench/display.ts';
import { HALF_WIDTH_DIV } from './picture.ts';

/** Heights over the base line, divisions; null where nothing is drawn. */
export interface TraceRow {
  /** divisions from the middle of the face */
  readonly xDiv: number;
  readonly out: number | null;
  /** of the way back; where it is blanked it draws the base line, and is null everywhere */
  readonly back: number | null;
}

export interface PipRow {
  readonly number: number | null;
  readonly xDiv: number;
  readonly height: number | null;
}

export interface Trace {
  readonly rows: readonly TraceRow[];
  readonly pips: readonly PipRow[];
  /** where way out and way back stand furthest apart, divisions; null where the way back is blanked */
  readonly apartDiv: number | null;
}

const STEP_DIV = 0.5;
/** Half of the stretch that is averaged, so that the beat of a pip does not count. */
const REACH_DIV = 0.15;

/** `beam` is read at once: the next picture of the same bench is written over it. `blanked`: the way back draws the base line. */
export function readTrace({ beam, tags }: Pick<BenchDisplay, 'beam' | 'tags'>, blanked: boolean): Trace {
  const half = beam.count >> 1;
  const outAt = heightsAlong(beam, 0, half);
  const places = Array.from({ length: 2 * (HALF_WIDTH_DIV / STEP_DIV) + 1 }, (_, i) => i * STEP_DIV - HALF_WIDTH_DIV);
  const out = places.map(outAt);
  const back = places.map(heightsAlong(beam, half, beam.count));
  const drawn = (heights: readonly (number | null)[]): readonly number[] => heights.filter((one) => one !== null);
  // Unblanked there is no base line but the foot of the trace itself.
  const base = blanked ? middleOf(drawn(back)) : Math.min(...drawn(out), ...drawn(back));
  const over = (height: number | null): number | null => (height === null ? null : height - base);
  const rows = places.map((xDiv, i) => ({ xDiv, out: over(out[i]!), back: blanked ? null : over(back[i]!) }));
  // At the rim of the face the beam turns round.
  const apart = rows
    .slice(1, -1)
    .flatMap((row) => (row.out === null || row.back === null ? [] : [Math.abs(row.out - row.back)]));
  return {
    rows,
    pips: tags.flatMap(({ number, xDiv }) => (xDiv === null ? [] : [{ number, xDiv, height: over(outAt(xDiv)) }])),
    apartDiv: blanked ? null : Math.max(0, ...apart),
  };
}

/** Over the middle line at a place, by a straight line through the points about it; null where there are none. */
function heightsAlong({ data }: BenchDisplay['beam'], from: number, to: number): (xDiv: number) => number | null {
  return (xDiv) => {
    let [n, x, y, xx, xy] = [0, 0, 0, 0, 0];
    for (let i = from; i < to; i++) {
      const away = data[3 * i]! - xDiv;
      if (Math.abs(away) > REACH_DIV) continue;
      const height = data[3 * i + 1]!;
      n++;
      x += away;
      y += height;
      xx += away * away;
      xy += away * height;
    }
    if (n === 0) return null;
    const spread = n * xx - x * x;
    // At the rim of the face the points lie on one side alone: there the mean is steadier than a line drawn on.
    return spread < 1e-9 || Math.abs(x / n) > REACH_DIV / 3 ? y / n : (y * xx - x * xy) / spread;
  };
}

function middleOf(heights: readonly number[]): number {
  const sorted = [...heights].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? 0;
}

/** What an eye reads off the tube: height of the curve, its span across, and the level at each pip. From the beam alone; divisions. Pure. */
import type { BeamPoints, BenchDisplay } from '../../bench/display.ts';

export interface PipReading {
  readonly hz: number;
  readonly number: number | null;
  readonly kind: 'crystal' | 'tunable' | 'comb';
  readonly xDiv: number;
  /** height over the lowest part of the trace; null where the beam does not pass */
  readonly heightDiv: number | null;
}

export interface TubeReading {
  readonly note: BenchDisplay['note'];
  /** highest less lowest part of the trace */
  readonly heightDiv: number;
  /** where the highest part stands */
  readonly topXDiv: number;
  readonly pips: readonly PipReading[];
}

/** Half the width over which a level is taken, so that the pip's own wiggles even out. */
const REACH_DIV = 0.12;

export function readTube({ beam, tags, note }: BenchDisplay): TubeReading {
  const lowest = extreme(beam, -1);
  const highest = extreme(beam, 1);
  const pips = tags
    .filter((tag) => tag.xDiv !== null)
    .map((tag) => {
      const level = levelNear(beam, tag.xDiv!);
      return {
        hz: tag.hz,
        number: tag.number,
        kind: tag.kind,
        xDiv: tag.xDiv!,
        heightDiv: level === null ? null : level - lowest.y,
      };
    });
  return { note, heightDiv: highest.y - lowest.y, topXDiv: highest.x, pips };
}

/** The beam's highest (sign 1) or lowest (sign -1) lit point. */
function extreme({ data, count }: BeamPoints, sign: 1 | -1): { x: number; y: number } {
  let best = { x: 0, y: 0 };
  let found = false;
  for (let i = 0; i < count; i++) {
    if (data[3 * i + 2]! <= 0) continue;
    const y = data[3 * i + 1]!;
    if (found && (y - best.y) * sign <= 0) continue;
    best = { x: data[3 * i]!, y };
    found = true;
  }
  return best;
}

/** Mean height of the forward trace (the first half of the beam) round `x`. */
function levelNear({ data, count }: BeamPoints, x: number): number | null {
  let sum = 0;
  let weight = 0;
  for (let i = 0; i < count / 2; i++) {
    const away = Math.abs(data[3 * i]! - x);
    if (away > REACH_DIV || data[3 * i + 2]! <= 0) continue;
    sum += data[3 * i + 1]!;
    weight += 1;
  }
  return weight === 0 ? null : sum / weight;
}

/**
 * The shape of the line on the tube: humps with the dips between them, and the two peaks and the crossing of an S-curve. Read from the beam in columns a
 * fifth of a division wide, in which the beat of a pip averages out.
 */
import type { BenchDisplay } from '../bench/display.ts';

type Beam = BenchDisplay['beam'];

export interface HumpReading {
  /** places of the humps, divisions from the centre, left to right; two or more */
  readonly xDiv: readonly number[];
  /** the deepest dip between them over the curve's height */
  readonly dipShare: number;
}

/** Heights are distances from the base line, divisions, none below zero. */
export interface SCurveOnTube {
  readonly upperXDiv: number;
  readonly upperDiv: number;
  readonly lowerXDiv: number;
  readonly lowerDiv: number;
  readonly zeroXDiv: number;
}

const COLUMN_DIV = 0.2;
const REACH_DIV = 6;
const COLUMNS = (2 * REACH_DIV) / COLUMN_DIV;
/** Points nearer to the base line than this may be the retrace's. */
const ON_BASE_DIV = 0.15;
/** A hump stands out from its dips by at least this much of the height. */
const HUMP_SHARE = 0.08;
/** The lesser side of an S-curve has at least this much of the greater. */
const S_SHARE = 0.25;

/** Mean height over the base line in each column; columns without the trace have none. */
function columns({ data, count }: Beam, base: number, leaveOut: number): Float64Array {
  const sums = new Float64Array(COLUMNS);
  const counts = new Float64Array(COLUMNS);
  for (let i = 0; i < count; i++) {
    const column = Math.floor((data[3 * i]! + REACH_DIV) / COLUMN_DIV);
    const above = data[3 * i + 1]! - base;
    if (column < 0 || column >= COLUMNS || Math.abs(above) < leaveOut) continue;
    sums[column] = sums[column]! + above;
    counts[column] = counts[column]! + 1;
  }
  return sums.map((sum, i) => (counts[i] === 0 ? 0 : sum / counts[i]!));
}

function middleOf(column: number): number {
  return -REACH_DIV + (column + 0.5) * COLUMN_DIV;
}

/** `height` with its sign: a curve may hang down. Null where there is only one hump. */
export function readHumps(beam: Beam, base: number, height: number): HumpReading | null {
  const shares = columns(beam, base, ON_BASE_DIV).map((level) => level / height);
  const tops: number[] = [];
  let dip = Number.POSITIVE_INFINITY;
  let deepest = 1;
  let climbing = true;
  let best = 0;
  for (let i = 0; i < COLUMNS; i++) {
    const share = shares[i]!;
    if (climbing) {
      if (share > shares[best]!) best = i;
      else if (shares[best]! - share >= HUMP_SHARE) {
        tops.push(best);
        if (tops.length > 1) deepest = Math.min(deepest, dip);
        climbing = false;
        dip = share;
      }
    } else {
      dip = Math.min(dip, share);
      if (share - dip >= HUMP_SHARE) {
        climbing = true;
        best = i;
      }
    }
  }
  return tops.length < 2 ? null : { xDiv: tops.map(middleOf), dipShare: deepest };
}

/** Null where the line keeps to one side of its base line, or nearly so. */
export function readSCurveOnTube(beam: Beam, base: number): SCurveOnTube | null {
  const levels = columns(beam, base, ON_BASE_DIV);
  let upper = 0;
  let lower = 0;
  for (let i = 0; i < COLUMNS; i++) {
    if (levels[i]! > levels[upper]!) upper = i;
    if (levels[i]! < levels[lower]!) lower = i;
  }
  const upperDiv = levels[upper]!;
  const lowerDiv = -levels[lower]!;
  if (Math.min(upperDiv, lowerDiv) < Math.max(S_SHARE * Math.max(upperDiv, lowerDiv), ON_BASE_DIV)) return null;
  const zeroXDiv = crossing(columns(beam, base, 0), upper, lower);
  return { upperXDiv: middleOf(upper), upperDiv, lowerXDiv: middleOf(lower), lowerDiv, zeroXDiv };
}

/** Where the columns change sign between the two peaks, straight between neighbours. */
function crossing(levels: Float64Array, upper: number, lower: number): number {
  const [from, to] = [Math.min(upper, lower), Math.max(upper, lower)];
  for (let i = from; i < to; i++) {
    const [a, b] = [levels[i]!, levels[i + 1]!];
    if (a * b <= 0 && a !== b) return middleOf(i) + (COLUMN_DIV * a) / (a - b);
  }
  return (middleOf(from) + middleOf(to)) / 2;
}

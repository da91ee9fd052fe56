/** The curve as something to be heard: from left to right as the beam draws it, the pitch by its height, a click at each pip. Pure; who plays it is not known here. */
import type { BenchDisplay } from '../bench/display.ts';

export interface CurveTones {
  /** pitches one after the other, all equally long, hertz */
  readonly pitchesHz: readonly number[];
  /** where a pip stands, as a share of the whole, 0 to 1 */
  readonly clicks: readonly number[];
  /** it is the figure of the sheet, and no picture of the tube */
  readonly wanted?: true;
}

/** The base line's pitch, and how many octaves above it the curve's highest point lies. */
const BASE_HZ = 330;
const OCTAVES = 1.6;
const COLUMNS = 96;

const pitch = (share: number): number => BASE_HZ * 2 ** (OCTAVES * share);

/** Of what the tube shows; null where nothing stands above the base line. `heightDiv` is the curve's height as `readCurve` reads it. */
export function tonesOnTube({ beam, tags }: Pick<BenchDisplay, 'beam' | 'tags'>, heightDiv: number): CurveTones | null {
  if (heightDiv === 0 || beam.count === 0) return null;
  let [left, right] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < beam.count; i++) {
    left = Math.min(left, beam.data[3 * i]!);
    right = Math.max(right, beam.data[3 * i]!);
  }
  if (right <= left) return null;
  const base = beam.data[1]!;
  // The trace and its return may both be lit: what stands furthest from the base line is the curve.
  const furthest = new Float64Array(COLUMNS);
  for (let i = 0; i < beam.count; i++) {
    const column = Math.min(COLUMNS - 1, Math.floor((COLUMNS * (beam.data[3 * i]! - left)) / (right - left)));
    const away = beam.data[3 * i + 1]! - base;
    if (Math.abs(away) > Math.abs(furthest[column]!)) furthest[column] = away;
  }
  const clicks = tags.flatMap(({ xDiv }) => (xDiv === null ? [] : [(xDiv - left) / (right - left)]));
  return {
    pitchesHz: Array.from(furthest, (away) => pitch(away / heightDiv)),
    clicks: clicks.filter((at) => at >= 0 && at <= 1),
  };
}

export interface WantedCurve {
  /** rising frequencies, hertz, and the level at each against the sheet's reference */
  readonly hz: ArrayLike<number>;
  readonly relative: ArrayLike<number>;
  readonly fromHz: number;
  readonly toHz: number;
  readonly pipsHz: readonly number[];
}

/** Of the figure that the sheet asks for, in the same pitches. */
export function tonesWanted({ hz, relative, fromHz, toHz, pipsHz }: WantedCurve): CurveTones {
  let most = 0;
  for (let i = 0; i < hz.length; i++)
    if (hz[i]! >= fromHz && hz[i]! <= toHz) most = Math.max(most, Math.abs(relative[i]!));
  const at = (wanted: number): number => {
    let i = 0;
    while (i < hz.length - 1 && hz[i + 1]! <= wanted) i++;
    return relative[i] ?? 0;
  };
  const pitchesHz = Array.from({ length: COLUMNS }, (_, column) =>
    pitch(most === 0 ? 0 : at(fromHz + ((column + 0.5) / COLUMNS) * (toHz - fromHz)) / most),
  );
  const clicks = pipsHz.map((pip) => (pip - fromHz) / (toHz - fromHz)).filter((share) => share >= 0 && share <= 1);
  return { pitchesHz, clicks, wanted: true };
}

/**
 * The figure for an intermediate stage: what the tube shows of a sound set, slugs right, with the sweep at a point farther on than the sheet's own and its level set for the
 * same detected volts. Where two slugs answer to one number, as those of a link or of an output pair do, it is the shape that tells them apart. Pure.
 */
import { type BenchSetup, designOf } from '../bench/setup.ts';
import { relativeTo } from '../bench/truth.ts';
import { createDetectedLevels } from '../receiver/detectedLevels.ts';
import type { Receiver, SheetResponse } from '../receiver/receiver.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';
import { type Curve, highest } from './curves.ts';
import type { SheetFigures } from './sheetFigures.ts';
import type { StageCurve, Turning } from './stageCurve.ts';

/** The point that the RF lead is at, where that is farther on than the response's own and the sheet knows a curve from there; else null. */
export function stageSwept(receiver: Receiver, { setUp, quantity }: SheetResponse, rf: string | null): string | null {
  if (rf === null || rf === setUp.injectAt || rf === setUp.observeAt || setUp.source === 'video') return null;
  const point = receiver.testPoints.find(({ id }) => id === rf);
  if (point === undefined || point.inject === null || point.node === null || point.looseLoop === true) return null;
  return quantity.kind === 'carrier' && quantity.node === point.node ? null : rf;
}

const ROUNDS = 2;
const LEAST_DB = -80;

/** Null where hardly anything comes through from there: the point is not on the way. */
export function stageFigures(setup: BenchSetup, whole: SheetFigures, at: string): SheetFigures | null {
  const { receiver, deck } = designOf(setup);
  const { response } = whole;
  const from = (levelDb: number): SheetResponse => ({
    ...response,
    setUp: { ...response.setUp, injectAt: at, levelDb },
  });
  let levelDb = response.setUp.levelDb;
  let detector = createDetectedLevels(receiver, deck, from(levelDb));
  for (let round = 0; round < ROUNDS; round++) {
    if (!(detector.referenceDetectedVolts > 0)) return null;
    const lacksDb = 20 * Math.log10(whole.volts / detector.referenceDetectedVolts);
    levelDb = Math.min(0, Math.max(LEAST_DB, levelDb + lacksDb));
    detector = createDetectedLevels(receiver, deck, from(levelDb));
  }
  if (detector.referenceDetectedVolts < whole.volts / 10) return null;
  const { nominal } = createStatedResponse(receiver, deck, from(levelDb));
  const own = relativeTo(nominal, response.specification);
  const top = highest(own);
  // The sheet's reference may lie beside this stage's top.
  const curve = { hz: nominal.hz, relative: own.map((level) => level / top) };
  const signed = response.specification.sCurve !== null;
  return {
    response,
    curve,
    levels: [],
    volts: whole.volts,
    onTube: detector.onTube,
    stage: { at, ...turnings(curve, signed) },
  };
}

/** A smaller rise or fall is not worth a word; nor is a peak as low as this. */
const PLAIN = 0.03;
const LOW_PEAK = 0.08;

export function turnings(curve: Curve, signed: boolean): Omit<StageCurve, 'at'> {
  const found = turns(curve).filter(({ level }) => !signed || Math.abs(level) > 0.5);
  if (signed)
    return { peaks: found.map(({ hz, level }) => ({ hz, level: Math.abs(level) })), dips: [], halfWayHz: null };
  const peaks = found.filter(({ top, level }) => top && level >= LOW_PEAK);
  const [first, last] = [peaks[0]?.hz ?? 0, peaks.at(-1)?.hz ?? 0];
  // Beside a hump that stays below half way there is still one top alone.
  const tall = peaks.filter(({ level }) => level >= 0.5);
  const dips = found.filter(({ top, hz }) => !top && hz > first && hz < last);
  return { peaks: peaks.map(bare), dips: dips.map(bare), halfWayHz: tall.length === 1 ? halfWay(curve) : null };
}

/** The outermost crossings of half the height; null where the curve does not come down that far on both sides. */
function halfWay({ hz, relative }: Curve): readonly [number, number] | null {
  const above = (i: number): boolean => relative[i]! >= 0.5;
  let first = 0;
  while (first < hz.length && !above(first)) first++;
  let last = hz.length - 1;
  while (last >= 0 && !above(last)) last--;
  if (first === 0 || last === hz.length - 1 || first > last) return null;
  const crossing = (below: number, over: number): number => {
    const share = (0.5 - relative[below]!) / (relative[over]! - relative[below]!);
    return hz[below]! + share * (hz[over]! - hz[below]!);
  };
  return [crossing(first - 1, first), crossing(last + 1, last)];
}

interface Turn extends Turning {
  readonly top: boolean;
}

const bare = ({ hz, level }: Turn): Turning => ({ hz, level });

/** Highest and lowest places by turns, each at least `PLAIN` from the one before and the one after. */
function turns({ hz, relative }: Curve): Turn[] {
  const all: Turn[] = [];
  let rising = true;
  let best = 0;
  for (let i = 1; i < hz.length; i++) {
    const sign = rising ? 1 : -1;
    if (sign * (relative[i]! - relative[best]!) > 0) best = i;
    else if (sign * (relative[best]! - relative[i]!) > PLAIN) {
      // What stands at the very edge goes on beyond it.
      if (best > 0) all.push({ hz: hz[best]!, level: relative[best]!, top: rising });
      rising = !rising;
      best = i;
    }
  }
  return all;
}

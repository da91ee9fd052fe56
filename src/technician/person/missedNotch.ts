/** Whether a notch is missing, and whether the slug of its trap does anything: what tells a trap that has failed from one that stands elsewhere. */
import { axisOf } from './eyes.ts';
import { type Hands, set } from './hands.ts';
import { readLevels } from './levels.ts';
import type { PrintedCurve } from './sheet.ts';
import { LOOKS, lookAtNotch, RAISED_DB, SEARCH, type WantedNotch } from './traps.ts';
import type { Turner } from './turner.ts';

/** Decibels over the sheet's limit, as the set was found and once its slug has been set, and so many times as far from its place as the sheet allows: an eye is sure of that. */
const SURE_DB = 8;
const SURE_SET_DB = 4;
const SURE_TIMES = 3;

/** Whether the notch reads missing, too flat by far or out of its place by far. `gone`: only where none is seen at all. */
export function readsMissed(hands: Hands, notch: WantedNotch, curve: PrintedCurve, gone: boolean): boolean {
  const { levelDb } = hands.knobs();
  set(hands, 'levelDb', Math.min(levelDb + RAISED_DB, hands.scale('levelDb').high));
  const { at, db } = lookAtNotch(hands, axisOf(hands), notch, curve);
  set(hands, 'levelDb', levelDb);
  const { hz, limitDb, withinHz } = notch;
  const flat = limitDb !== null && db > limitDb + (gone ? SURE_DB : SURE_SET_DB);
  if (gone) return flat && at === null;
  if (flat) return true;
  return withinHz !== null && at !== null && Math.abs(at - hz) > SURE_TIMES * withinHz;
}

const TRIED_TURNS = [2, -2] as const;
/** What the line near a trap's place changes by, in decibels over a floor, when the slug of a good trap is turned so far. */
const DOES_DB = 1.5;
const DOES_FLOOR = 0.0003;

/** Whether a trap's slug does anything at all to the line about where the trap works. It is left as it stood. */
export function slugDoesNothing(
  hands: Hands,
  turner: Turner,
  { slug, hz }: Pick<WantedNotch, 'slug' | 'hz'>,
  curve: PrintedCurve,
): boolean {
  const { levelDb } = hands.knobs();
  set(hands, 'levelDb', Math.min(levelDb + RAISED_DB, hands.scale('levelDb').high));
  const axis = axisOf(hands);
  const places = Array.from({ length: LOOKS }, (_, i) => hz * (1 + SEARCH * ((2 * i) / (LOOKS - 1) - 1)));
  const look = (): number[] =>
    readLevels(hands, curve, places, axis).map((level) => 20 * Math.log10(level + DOES_FLOOR));
  const before = look();
  const does = TRIED_TURNS.some((turns) => {
    const made = turner.turn(slug, turns);
    const after = look();
    turner.turn(slug, -made);
    return after.some((db, i) => Math.abs(db - before[i]!) > DOES_DB);
  });
  set(hands, 'levelDb', levelDb);
  return !does;
}

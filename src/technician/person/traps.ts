/**
 * Setting a trap alone. `bringNotch`: where its notch lies is read off with the level up, and the slug turned by what the notebook says of so many hertz. `setTrap`: the long way, by
 * rocking the slug for the lowest line.
 */
import { type Axis, axisOf, FLOOR_VOLTS, readVolts } from './eyes.ts';
import { type Hands, set } from './hands.ts';
import { readLevels } from './levels.ts';
import type { PrintedCurve } from './sheet.ts';
import type { Turner } from './turner.ts';

/** How far either side of its frequency a notch is looked for, as a share of it. */
export const SEARCH = 0.05;
export const LOOKS = 41;
/** A core moves a trap by about a hundredth of its frequency a turn: what any trade text says of a slug of twenty turns. */
const SHARE_A_TURN = 0.01;
const ROCKS = [1, 0.5, 0.25, 0.125, 1 / 16, 1 / 32] as const;

/** So much more level shows what lies deep in a notch, decibels. */
export const RAISED_DB = 20;

export function setTrap(hands: Hands, turner: Turner, slug: string, hz: number): void {
  const { levelDb } = hands.knobs();
  hands.note({ kind: 'notch', slug, hz, seenHz: null });
  set(hands, 'levelDb', Math.min(levelDb + RAISED_DB, hands.scale('levelDb').high));
  rockForLeast(hands, turner, slug, hz);
  set(hands, 'levelDb', levelDb);
}

function rockForLeast(hands: Hands, turner: Turner, slug: string, hz: number): void {
  const axis = axisOf(hands);
  const notch = notchNear(hands, axis, hz);
  if (notch !== null) {
    // Further in is more inductance, and lower.
    const turns = (notch - hz) / (SHARE_A_TURN * hz);
    const before = levelAt(hands, axis, hz);
    const made = turner.turn(slug, turns);
    if (levelAt(hands, axis, hz) > before) turner.turn(slug, -made);
  }
  let level = levelAt(hands, axis, hz);
  for (const step of ROCKS) {
    for (const way of [1, -1]) {
      for (let moves = 0; moves < 6; moves++) {
        const made = turner.turn(slug, way * step);
        const now = levelAt(hands, axis, hz);
        if (now < 0.97 * level) level = now;
        else {
          turner.turn(slug, -made);
          break;
        }
      }
    }
  }
}

const NOTCH_ROUNDS = 5;
/** Of what the sheet allows: so near a notch is left alone. */
const NEAR = 0.5;
/** The same where it has been set already. */
const NEAR_ENOUGH = 0.75;
/** Of what the sheet allows: farther off, a notch is set again, however deep the line is there, as the eye errs by a tenth of it. */
const SURELY_OUT = 0.9;
/** Without a place on the sheet, as a share of the frequency. */
const PLACE = 0.002;
/** So near another trap's frequency, as a share of it, a notch is taken for that one's. */
const ANOTHERS = 0.012;
const FINE_LOOKS = 41;
const FINE_SHARE = 0.0005;

export interface WantedNotch {
  readonly slug: string;
  readonly hz: number;
  /** hertz that a turn in moves it, from the notebook */
  readonly hzATurn: number;
  readonly withinHz: number | null;
  /** low enough, decibels under the printed peak; null where the sheet asks for no depth */
  readonly wantedDb: number | null;
  /** what the sheet asks for at least; null where it asks for no depth */
  readonly limitDb: number | null;
  /** frequencies at which other traps work: a notch there is theirs */
  readonly othersHz: readonly number[];
  /** two slugs work at this frequency: one notch may hide the other, and only the depth tells */
  readonly shared: boolean;
}

/** A notch that a turn moves by less than this share of what the notebook says, or by more than its inverse, is another's. */
const ITS_OWN = 0.35;

/** True where notch and depth read well inside at the end. What reads so at first is not touched. */
export function bringNotch(
  hands: Hands,
  turner: Turner,
  notch: WantedNotch,
  curve: PrintedCurve,
  again: boolean,
): boolean {
  const { slug, hz, wantedDb } = notch;
  const within = (again ? NEAR_ENOUGH : NEAR) * (notch.withinHz ?? PLACE * hz);
  const { levelDb } = hands.knobs();
  set(hands, 'levelDb', Math.min(levelDb + RAISED_DB, hands.scale('levelDb').high));
  const axis = axisOf(hands);
  const onlyDepth = notch.withinHz === null && wantedDb !== null;
  const deepEnough = (db: number): boolean => wantedDb === null || db < wantedDb;
  let hzATurn = notch.hzATurn;
  let last: { readonly at: number; readonly made: number } | null = null;
  let good = false;
  for (let round = 0; round < NOTCH_ROUNDS; round++) {
    const { at, db } = lookAtNotch(hands, axis, notch, curve);
    if (notch.shared && !deepEnough(db)) {
      rockToLeast(turner, slug, () => readLevels(hands, curve, [hz], axis)[0]!);
      good = deepEnough(lookAtNotch(hands, axis, notch, curve).db);
      break;
    }
    if (at === null) break;
    if (last !== null && Math.abs(last.made) > 0.1) {
      const shown = (at - last.at) / last.made;
      if (shown / hzATurn < ITS_OWN || shown / hzATurn > 1 / ITS_OWN) {
        turner.turn(slug, -last.made);
        break;
      }
      hzATurn = shown;
    }
    const deep = deepEnough(db);
    const off = Math.abs(at - hz);
    // What is deep enough may stay where it was once put, or found where the sheet asks for depth alone; what is in its place cannot be put there.
    const stays =
      (again && (notch.withinHz === null || off < SURELY_OUT * notch.withinHz)) || (round === 0 && onlyDepth);
    good = (off <= within && (deep || round > 0)) || (deep && stays) || off < 0.1 * within;
    if (good) break;
    hands.note({ kind: 'notch', slug, hz, seenHz: at });
    const made = turner.turn(slug, (hz - at) / hzATurn);
    if (made === 0) break;
    last = { at, made };
  }
  set(hands, 'levelDb', levelDb);
  return good;
}

const ROCK_TURNS = 0.4;
const MOST_ROCKS = 8;
/** Less of a change than this is not one. */
const CHANGE = 0.03;

/** A slug turned on for as long as the line falls; then a parabola through the squares of the last three heights says where it is lowest. */
function rockToLeast(turner: Turner, slug: string, height: () => number): void {
  const square = (): number => height() ** 2;
  let at = 0;
  let [here, step] = [square(), ROCK_TURNS];
  let before: readonly [at: number, square: number] | null = null;
  for (let n = 0; n < MOST_ROCKS; n++) {
    const made = turner.turn(slug, step);
    if (made === 0) return;
    const there = square();
    if (there < here * (1 - CHANGE)) {
      before = [at, here];
      at += made;
      here = there;
      continue;
    }
    if (before === null && step > 0) {
      // The other way, from where it stood.
      before = [made, there];
      turner.turn(slug, -made);
      step = -step;
      continue;
    }
    const [a, ya] = before ?? [at - made, there];
    const [x1, x2, x3] = [a - at, 0, made];
    const bend = (ya - here) / (x1 - x2) - (there - here) / (x3 - x2);
    const curve = bend / (x1 - x3);
    const lowest = curve > 0 ? (x1 + x2) / 2 - (ya - here) / (x1 - x2) / (2 * curve) : 0;
    turner.turn(slug, Math.min(Math.max(lowest, Math.min(x1, x3)), Math.max(x1, x3)) - made);
    return;
  }
}

/** Where the notch lies, by the bottom of a parabola laid through the squares of the levels beside it, and the level at the wanted place: all from one look. */
export function lookAtNotch(
  hands: Hands,
  axis: Axis,
  { hz, othersHz }: WantedNotch,
  curve: PrintedCurve,
): { readonly at: number | null; readonly db: number } {
  const coarse = Array.from({ length: LOOKS }, (_, i) => hz * (1 + SEARCH * ((2 * i) / (LOOKS - 1) - 1))).filter((f) =>
    othersHz.every((other) => Math.abs(f / other - 1) > ANOTHERS),
  );
  const half = (FINE_LOOKS - 1) / 2;
  const fine = Array.from({ length: FINE_LOOKS }, (_, i) => hz * (1 + FINE_SHARE * (i - half)));
  const levels = readLevels(hands, curve, [...coarse, ...fine], axis);
  const db = 20 * Math.log10(levels[coarse.length + half]!);
  const near = levels.slice(coarse.length);
  const at = middleOf(near);
  if (at === null) return { at: deepest(coarse, levels.slice(0, coarse.length)), db };
  return { at: hz * (1 + FINE_SHARE * (at - half)), db };
}

/** Shares of the height of the lower shoulder at which a notch's two sides are marked. */
const MARKS = [0.45, 0.75] as const;
/** Farther than so many places from the lowest of the line a bottom is not drawn. */
const MOST_DRAWN = 4;

/** The bottom of a notch, counted in places: half way between its sides, marked at two heights and drawn down to nothing; null where it is not whole. */
function middleOf(levels: readonly number[]): number | null {
  const least = middleOfLevel(levels, levels.indexOf(Math.min(...levels)));
  const shoulder = Math.min(Math.max(...levels.slice(0, least + 1)), Math.max(...levels.slice(least)));
  if (least < 3 || least > levels.length - 4 || shoulder < 2 * levels[least]!) return null;
  const middles = MARKS.map((share) => {
    const mark = levels[least]! + share * (shoulder - levels[least]!);
    return (side(levels, least, -1, mark) + side(levels, least, 1, mark)) / 2;
  });
  const [low, high] = middles as [number, number];
  const bottom = low - ((high - low) * MARKS[0]) / (MARKS[1] - MARKS[0]);
  // A bottom that lies in the grass has no lowest place of its own, and the lower marks lie in it too: half way between the sides, high up, is what is left to go by.
  return Math.abs(bottom - least) > MOST_DRAWN ? high : bottom;
}

/** What lies under the noise is a stretch of the same height: the middle of that, from its first place. */
function middleOfLevel(levels: readonly number[], first: number): number {
  let last = first;
  while (last + 1 < levels.length && levels[last + 1]! <= levels[first]!) last++;
  return Math.floor((first + last) / 2);
}

/** Where a line first rises over a mark, from a place to one side. */
function side(levels: readonly number[], from: number, way: 1 | -1, mark: number): number {
  let i = from;
  while (i + way >= 0 && i + way < levels.length && levels[i + way]! < mark) i += way;
  const [a, b] = [levels[i]!, levels[i + way] ?? levels[i]!];
  return b === a ? i : i + (way * (mark - a)) / (b - a);
}

function levelAt(hands: Hands, axis: Axis, hz: number): number {
  return Math.max(Math.abs(readVolts(hands, [hz], axis)[0]!), FLOOR_VOLTS);
}

/** The deepest dip between two higher places; null where the line only rises or falls. */
function notchNear(hands: Hands, axis: Axis, hz: number): number | null {
  const places = Array.from({ length: LOOKS }, (_, i) => hz * (1 + SEARCH * ((2 * i) / (LOOKS - 1) - 1)));
  return deepest(
    places,
    readVolts(hands, places, axis).map((v) => Math.max(Math.abs(v), FLOOR_VOLTS)),
  );
}

function deepest(places: readonly number[], heights: readonly number[]): number | null {
  const levels = heights.map((v) => 20 * Math.log10(v));
  let best: number | null = null;
  let depth = 3;
  for (let i = 1; i + 1 < places.length; i++) {
    const left = Math.max(...levels.slice(0, i));
    const right = Math.max(...levels.slice(i + 1));
    const dip = Math.min(left, right) - levels[i]!;
    if (dip > depth) {
      depth = dip;
      best = places[middleOfLevel(levels, i)]!;
    }
  }
  return best;
}

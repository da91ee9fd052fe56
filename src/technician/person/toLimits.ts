/**
 * The last touches, by the sheet's own figures: each demand is worked out from what the tube shows, and the slugs are turned together until all of them lie well inside
 * their limits. The detector's curve is known from the sheet, which prints volts beside levels.
 */
import { axisOf, grassOnLine, readVolts } from './eyes.ts';
import { descend, type Fit } from './fit.ts';
import { type Hands, set } from './hands.ts';
import { solve } from './leastSquares.ts';
import { readLevels } from './levels.ts';
import type { JudgedDemand, PrintedCurve, PrintedResponse } from './sheet.ts';
import type { Turner } from './turner.ts';

/** As near to what is wanted as a person bothers to go, in tolerances. */
const WELL_INSIDE = 0.4;
/** From here to the limit, in tolerances, a demand presses so much more. */
const NEAR_LIMIT = 0.6;
const PRESSING = 3;
const TRIAL_TURNS = 0.25;
const ROUNDS = 10;

/** Traps are set by themselves, each for its own notch. */
export function isTrap({ id }: JudgedDemand): boolean {
  return id.startsWith('trap:') || id.startsWith('notch:');
}

/** How far the worst demand that the humps answer for is from what is wanted, in tolerances: above one it is outside. */
export function worstDemand(hands: Hands, response: PrintedResponse, curve: PrintedCurve): number {
  const open = demandsNow(hands, response, curve).filter((demand) => !isTrap(demand));
  return Math.max(0, ...open.map(away).map(Math.abs));
}

export function bringInside(
  hands: Hands,
  turner: Turner,
  response: PrintedResponse,
  curve: PrintedCurve,
  slugs: readonly string[],
  timeLeft: () => boolean,
): Fit {
  const look = (): number[] =>
    demandsNow(hands, response, curve).flatMap((demand) => {
      if (isTrap(demand)) return [];
      const off = away(demand);
      return [Math.sign(off) * pressing(Math.abs(off))];
    });
  return descend(turner, slugs, look, {
    rounds: ROUNDS,
    goodEnough: WELL_INSIDE / 4,
    trialTurns: TRIAL_TURNS,
    timeLeft,
  });
}

const NUDGES = [0.25, 0.125, 0.0625] as const;
const MOST_NUDGES = 12;
/** So high a power hears the worst demand above all others, and the next worst a little. */
const WORST_FIRST = 10;

/** One slug after the other a little in or out, for as long as the worst demands come nearer to what is wanted. */
export function lowerEach(
  hands: Hands,
  turner: Turner,
  response: PrintedResponse,
  curve: PrintedCurve,
  slugs: readonly string[],
  timeLeft: () => boolean,
): void {
  const worst = (): number =>
    demandsNow(hands, response, curve)
      .filter((demand) => !isTrap(demand))
      .reduce((sum, demand) => sum + Math.abs(away(demand)) ** WORST_FIRST, 0) **
    (1 / WORST_FIRST);
  let now = worst();
  for (const nudge of NUDGES) {
    let better = true;
    for (let round = 0; better && round < MOST_NUDGES; round++) {
      better = false;
      for (const slug of slugs) {
        for (const way of [1, -1]) {
          if (!timeLeft() || now < NEAR_LIMIT) return;
          const made = turner.turn(slug, way * nudge);
          const then = worst();
          if (made !== 0 && then < now) {
            now = then;
            better = true;
            break;
          }
          turner.turn(slug, -made);
        }
      }
    }
  }
}

/** What is near its limit or over it counts for more than what only could be nicer. */
function pressing(tolerances: number): number {
  return Math.max(0, tolerances - WELL_INSIDE / 2) + PRESSING * Math.max(0, tolerances - NEAR_LIMIT);
}

function demandsNow(hands: Hands, response: PrintedResponse, curve: PrintedCurve): readonly JudgedDemand[] {
  return response.judge(levelsNow(hands, response, curve));
}

/** What the tube shows, in the sheet's own measure: levels of the carrier against the printed peak (an S-curve: volts against its height). */
export function levelsNow(hands: Hands, response: PrintedResponse, curve: PrintedCurve): number[] {
  const isSCurve = response.specification.sCurve !== null;
  const axis = axisOf(hands);
  if (isSCurve) {
    const height = Math.max(...curve.volts.map(Math.abs));
    return smooth(readVolts(hands, response.lookAtHz, axis), response).map((v) => v / height);
  }
  const read = (faint: boolean): number[] =>
    smooth(readLevels(hands, curve, response.lookAtHz, axis, faint), response).map((v) => Math.max(v, LEAST_LEVEL));
  const seen = read(false);
  // What hardly rises out of the noise is read with more from the source: all of it, or the skirts, which no stage is driven too hard by.
  const { levelDb } = hands.knobs();
  const louder = (byDb: number, faint: boolean): number[] => {
    set(hands, 'levelDb', Math.min(Math.round(levelDb + byDb), hands.scale('levelDb').high));
    const levels = read(faint);
    set(hands, 'levelDb', levelDb);
    return levels;
  };
  const raised = Math.min(-20 * Math.log10(Math.max(...seen, 1e-3)), MOST_RAISED_DB);
  if (raised >= RAISED_DB) return louder(raised, true);
  const peak = curve.volts.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  const grassy = grassOnLine(hands) >= GRASSY * peak;
  if (!grassy && response.specification.skirts.length === 0) return seen;
  const skirts = louder(SKIRTS_RAISED_DB, false);
  // More from the source changes a curve, and not that of every set alike: it is asked only where the line of the face tells less.
  const low = grassy ? LOW_LEVEL : LOWEST_LEVEL;
  return seen.map((v, i) => (Math.max(v, skirts[i]!) < low ? skirts[i]! : v));
}

const LEAST_LEVEL = 1e-5;

/** Of the printed height: grass as thick as that hides the skirts, and what lies so low is read by itself. */
const GRASSY = 0.005;
const LOW_LEVEL = 0.15;
/** And without grass: low down a detector bends so much that a line of the face tells little. */
const LOWEST_LEVEL = 0.03;
const SKIRTS_RAISED_DB = 16;

/** The eye lays a line through the noise: the parabola that fits best over so many places either side, but not beside a trap. */
const SMOOTHED = 3;
const BESIDE_TRAP = 0.009;

function smooth(values: readonly number[], { lookAtHz: hz, specification }: PrintedResponse): number[] {
  return values.map((v, i) => {
    const reach = Math.min(SMOOTHED, i, values.length - 1 - i);
    if (reach < 2 || specification.traps.some((trap) => Math.abs(hz[i]! / trap.hz - 1) < BESIDE_TRAP)) return v;
    const width = hz[i + reach]! - hz[i - reach]!;
    const [sums, right] = [
      [0, 0, 0, 0, 0],
      [0, 0, 0],
    ];
    for (let k = i - reach; k <= i + reach; k++) {
      const x = (hz[k]! - hz[i]!) / width;
      for (let power = 0; power < 5; power++) sums[power]! += x ** power;
      for (let power = 0; power < 3; power++) right[power]! += values[k]! * x ** power;
    }
    return solve(
      [0, 1, 2].map((row) => sums.slice(row, row + 3)),
      right,
    )[0]!;
  });
}

const RAISED_DB = 8;
const MOST_RAISED_DB = 20;

/** A curve that runs the wrong way is as far from right as that. */
const WRONG_WAY = 2;

/** From what is wanted, in tolerances, with its sign. */
export function away({ id, measured, low, high, tolerance }: JudgedDemand): number {
  // A yes or no has no half way.
  if (id.startsWith('polarity:')) return low === null || measured >= low ? 0 : -WRONG_WAY;
  if (low !== null && high !== null) return (measured - (low + high) / 2) / Math.max((high - low) / 2, 1e-12);
  if (high !== null) return Math.max(0, 1 + (measured - high) / tolerance);
  return low === null ? 0 : Math.min(0, (measured - low) / tolerance - 1);
}

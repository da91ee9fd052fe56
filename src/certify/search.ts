/**
 * Finding a slug setting that meets the sheet, as a good hand with the printed curve would: each trap alone for its minimum, the curve laid on the printed one, then the
 * lines of the sheet; where that ends wrongly, again from another place.
 */
import { seededRandom } from '../base/random.ts';
import type { Adjuster } from '../receiver/receiver.ts';
import type { CoreTurns } from '../receiver/statedResponse.ts';
import type { Demands, Standing } from './demands.ts';
import { leastSquares } from './leastSquares.ts';

export interface Found {
  readonly turns: CoreTurns;
  readonly met: boolean;
  /** the line that is furthest outside, or the least far inside */
  readonly worst: Standing;
  /** 1: the first try served */
  readonly tries: number;
}

export interface SearchTask {
  readonly demands: Demands;
  /** each response by itself, in the order in which they are first laid on; empty where there is but one */
  readonly stages: () => readonly Demands[];
  /** slugs that turn */
  readonly adjusters: readonly Adjuster[];
  readonly start: CoreTurns;
  readonly seed: number;
  readonly mostTries: number;
  /** ask no more once the sheet is met */
  readonly stopWhenMet: boolean;
  /** a try whose worst line is further outside than this, in tolerances, once the curve lies on the printed one, goes no further; left out: none is given up */
  readonly hopeless?: number | undefined;
}

const TRAP_STEPS = 24;
const MOST_PRINTED = 25;
const MOST_DEMANDED = 30;
/** Three hundredths of a decibel all over: no hand gets it nearer. */
const PRINTED_ENOUGH = 1e-3;
/** New starts lie this far from the middle of the travel, as a share of it. */
const RESTART_SHARE = 0.35;

export function search(task: SearchTask): Found {
  const { adjusters, demands, start } = task;
  const chance = seededRandom(task.seed);
  let best: Found | null = null;
  for (let tries = 1; tries <= task.mostTries; tries++) {
    const from = tries === 1 ? start : scattered(adjusters, start, chance);
    const turns = adjusters.length === 0 ? start : oneTry(task, from);
    const worst = worstOf(demands.standings(turns));
    if (best === null || worst.excess < best.worst.excess) best = { turns, met: worst.excess <= 0, worst, tries };
    if ((best.met && task.stopWhenMet) || adjusters.length === 0) break;
  }
  return best!;
}

/** First and last length of a step, turns. */
const STEPS = [0.125, 0.004] as const;
/** Further outside than this, in tolerances, small steps do not help. */
const WITHIN_STEPS = 1.5;
const MOST_LOOKS = 250;

/** From a place downhill in the worst line alone: along each slug and along pairs of them, by steps that halve where none helps. It stops where the sheet is met. */
export function lowerWorst(
  demands: Demands,
  adjusters: readonly Adjuster[],
  from: CoreTurns,
): Pick<Found, 'turns' | 'worst'> {
  const ways = adjusters.flatMap((a, i) => [
    [[a, 1] as const],
    [[a, -1] as const],
    ...adjusters.slice(i + 1).flatMap((b) =>
      [
        [1, 1],
        [1, -1],
        [-1, 1],
        [-1, -1],
      ].map(([k, m]) => [[a, k!] as const, [b, m!] as const]),
    ),
  ]);
  let best = { turns: from, worst: worstOf(demands.standings(from)) };
  if (best.worst.excess > WITHIN_STEPS) return best;
  let looks = 0;
  for (let step: number = STEPS[0]; step >= STEPS[1] && best.worst.excess > 0 && looks < MOST_LOOKS; ) {
    let helped = false;
    for (const way of ways) {
      const turns = { ...best.turns };
      for (const [{ id, travelTurns }, k] of way) turns[id] = Math.min(Math.max(turns[id]! + k * step, 0), travelTurns);
      const worst = worstOf(demands.standings(turns));
      looks++;
      if (worst.excess >= best.worst.excess) continue;
      best = { turns, worst };
      helped = true;
    }
    if (!helped) step /= 2;
  }
  return best;
}

/** The line that is furthest outside, or inside by the least. A yes-or-no line that is met has no margin and is never the nearest. */
export function worstOf(standings: readonly Standing[]): Standing {
  const measured = standings.filter(({ item, excess }) => item.kind !== 'polarity' || excess > 0);
  const [first, ...rest] = measured.length > 0 ? measured : standings;
  if (first === undefined) throw new Error('a sheet without a line');
  return rest.reduce((worst, one) => (one.excess > worst.excess ? one : worst), first);
}

function oneTry({ demands, stages, adjusters, hopeless }: SearchTask, from: CoreTurns): CoreTurns {
  const box = { low: adjusters.map(() => 0), high: adjusters.map((a) => a.travelTurns) };
  const turnsOf = (x: Float64Array): CoreTurns => ({
    ...from,
    ...Object.fromEntries(adjusters.map((a, j) => [a.id, x[j]!])),
  });
  const trapped = trapsAlone(demands, adjusters, from);
  const lay = (on: Demands, x: Float64Array): Float64Array =>
    leastSquares(
      {
        residuals: (at) => on.printed(turnsOf(at)),
        slopes: (at) => on.printedSlopes(turnsOf(at)),
        box,
        mostIterations: MOST_PRINTED,
        enough: PRINTED_ENOUGH,
      },
      x,
    ).x;
  const placed = Float64Array.from(adjusters, (a) => trapped[a.id]!);
  const laid = [...stages(), demands].reduce<Float64Array>((x, on) => lay(on, x), placed);
  if (hopeless !== undefined && worstOf(demands.standings(turnsOf(laid))).excess > hopeless) return turnsOf(laid);
  const met = leastSquares(
    {
      residuals: (x) => demands.demanded(turnsOf(x)),
      slopes: (x) => demands.demandedSlopes(turnsOf(x)),
      box,
      mostIterations: MOST_DEMANDED,
      enough: 1e-12,
    },
    laid,
  );
  return turnsOf(met.x);
}

/** Each trap by itself for the least level at its own frequency, the rest standing still: the travel in steps, then the best place halved down. */
export function trapsAlone(
  demands: Demands,
  adjusters: readonly Adjuster[],
  from: CoreTurns,
): Readonly<Record<string, number>> {
  const turns: Record<string, number> = { ...from };
  for (const { id, kind, trapHz, travelTurns } of adjusters) {
    const level = kind === 'trap' && trapHz !== null ? demands.levelAt(trapHz) : null;
    if (level === null) continue;
    const at = (t: number): number => level({ ...turns, [id]: t });
    let step = travelTurns / TRAP_STEPS;
    let best = turns[id]!;
    let least = at(best);
    const consider = (t: number): void => {
      const volts = t < 0 || t > travelTurns ? Number.POSITIVE_INFINITY : at(t);
      if (volts < least) {
        best = t;
        least = volts;
      }
    };
    for (let i = 0; i <= TRAP_STEPS; i++) consider(i * step);
    for (; step > 0.005; step /= 2) for (const t of [best - step, best + step]) consider(t);
    turns[id] = best;
  }
  return turns;
}

function scattered(adjusters: readonly Adjuster[], start: CoreTurns, chance: () => number): CoreTurns {
  const places = adjusters.map(({ id, travelTurns }) => [id, travelTurns * (0.5 + RESTART_SHARE * (2 * chance() - 1))]);
  return { ...start, ...Object.fromEntries(places) };
}

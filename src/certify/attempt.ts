/**
 * Attempts at a sealed scenario. Each is dealt afresh: a set of its own, slugs astray in other ways, a bench that lies by other amounts; the lesson stays, and
 * so do the faults, unless the scenario deals them.
 * An attempt is a scenario like any other, made of the one in the course and a number, so a run file that carries it can be replayed by itself; whoever has the
 * course makes it again from the number and sees that it is the same.
 *
 * Ideas are tried in the order of their numbers, 0, 1, 2 ..., until one can be certified. An idea deals but the first draw of its set and searches once: what does not
 * come right at once costs less than the next idea. The route of its certificate is the straight way to the set's best place.
 */

import { DEALS_ON } from '../base/engine.ts';
import { seededRandom } from '../base/random.ts';
import type { Result } from '../base/result.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { mixed, type SetParts, spreadsOf } from '../receiver/individualSet.ts';
import type { Adjuster } from '../receiver/receiver.ts';
import { workResponses } from '../receiver/responses.ts';
import { nominalTurns } from '../receiver/slugLaw.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { certifyScenario } from './certifyScenario.ts';
import { dealFaults } from './dealFaults.ts';
import { dealSet } from './dealSet.ts';
import { IDEAS_OF_ATTEMPT, noIdea, seedDealt } from './dealt.ts';
import { createHand, fillTube, makeSound, setUpFor, turnAll } from './goodHand.ts';
import { onBenchWith } from './knownSet.ts';

/** Shares of the file's own figures: how far a slug stands off, how far the bench is off. */
const LEAST_SHARE = 0.5;
const MOST_SHARE = 1.75;
const EIGHTH = 1 / 8;
/** Turns kept free before a stop. */
const CLEAR_TURNS = 0.5;
const MOST_LAG_DEGREES = 40;
const DIAL_STEP_HZ = 1000;
/** From edge to edge, at the Y gain that shows the aligned curve tall. */
const LEAST_HUM_DIV = 0.4;
const MOST_HUM_DIV = 7;

/**
 * The bench of attempt number `attempt` at a sealed scenario of the course. `onShare` is told what share of the ideas has been tried, from 0 to 1. `room`: of a tolerance, what lies
 * between the worst line of the set's best place and its limit at least; attempts of the first days were dealt without (`NO_ROOM`).
 */
export function attemptSetup(
  design: SetParts,
  scenario: Scenario,
  attempt: number,
  onShare: (share: number) => void = () => {},
  room = ROOM,
): Result<BenchSetup> {
  const found = firstIdea(design, scenario, attempt, { onShare, room });
  return found === null ? noIdea(scenario, attempt) : { ok: true, value: found.setup };
}

/** Some of the ideas: every `step`-th from `first` on; left out, all of them. */
export interface IdeasTried {
  readonly first?: number;
  readonly step?: number;
  readonly room?: number;
  readonly onShare?: (share: number) => void;
}

export interface FoundIdea {
  readonly idea: number;
  readonly setup: BenchSetup;
}

/** The first of the ideas that can be certified; null: none of them. Ideas know nothing of each other: who tries them by turns in two places takes the lower one, once all below it have come to nothing. */
export function firstIdea(
  design: SetParts,
  scenario: Scenario,
  attempt: number,
  { first = 0, step = 1, room = ROOM, onShare = () => {} }: IdeasTried = {},
): FoundIdea | null {
  for (let idea = first; idea < IDEAS_OF_ATTEMPT; idea += step) {
    onShare(idea / IDEAS_OF_ATTEMPT);
    const setup = tried(design, scenario, attempt, idea, room);
    if (setup !== null) return { idea, setup };
  }
  return null;
}

function tried(design: SetParts, scenario: Scenario, attempt: number, idea: number, room: number): BenchSetup | null {
  const chance = seededRandom(mixed(attempt, idea));
  const seed = seedDealt(chance);
  const deal = dealSet(design, seed, spreadsOf(design.receiver), { mostDraws: 1, tries: 1, hopeless: HOPELESS });
  if (!deal.ok) return null;
  const { set, draw } = deal.dealt;
  const dealt: Scenario = {
    ...scenario,
    attempt,
    set: seed,
    seed: seedDealt(chance),
    start: { ...scenario.start, slugs: slugsOff(scenario, set.receiver.adjusters, chance) },
    bench: benchLies(scenario.bench, chance),
    faults: dealFaults(design, scenario, chance),
  };
  const setup = onBenchWith(design, dealt, set, draw, scenario.id);
  if (!setup.ok) return null;
  // A number has been handed out: whatever engine is today's, it deals what it dealt.
  const dealing = { ...setup.value, engine: DEALS_ON };
  const outcome = certifyScenario(dealing, {
    spot: true,
    leastAstray: LEAST_ASTRAY,
    leastUncured: scenario.dealsFaults === true ? LEAST_ASTRAY : 0,
    room,
    // A part that slugs all but make up for would be named by luck.
    ...(scenario.dealsFaults === true ? { refusedUncured: LEAST_ASTRAY } : {}),
  });
  if (!outcome.ok) return null;
  const life = {
    ...scenario.life,
    strapHumVolts: humDealt(dealing, seededRandom(mixed(attempt, IDEAS_OF_ATTEMPT + idea))),
  };
  return { ...setup.value, scenario: { ...dealt, life, par: outcome.certificate.par } };
}

/** Tolerances that an attempt is outside the sheet by at least, as it is found; and, where it deals its faults, however the slugs are turned while a part has failed. */
const LEAST_ASTRAY = 0.5;
/** Nobody reads a graticule so finely as to bring a set to a place that leaves less. */
const ROOM = 0.15;
export const NO_ROOM = 0;
/** Tolerances outside the sheet, once the curve lies on the printed one, beyond which a set is given up. */
const HOPELESS = 2;

/**
 * As many slugs off as in the file, traps for traps and the rest for the rest, either way, by eighths of a turn. Slugs that a fault names stand as the file has them.
 */
function slugsOff(
  { start, faults }: Scenario,
  adjusters: readonly Adjuster[],
  chance: () => number,
): Readonly<Record<string, number>> {
  const own = new Set(faults.flatMap((fault) => ('slug' in fault ? [fault.slug] : [])));
  const slugs: Record<string, number> = {};
  for (const kind of ['slug', 'trap'] as const) {
    const ofKind = adjusters.filter((a) => a.kind === kind && !own.has(a.id));
    const sizes = ofKind.filter((a) => start.slugs[a.id]).map((a) => Math.abs(start.slugs[a.id]!));
    const order = ofKind.map((a) => ({ a, at: chance() })).sort((x, y) => x.at - y.at);
    for (const [i, size] of sizes.entries()) slugs[order[i]!.a.id] = awayOf(order[i]!.a, size, chance);
  }
  for (const [id, away] of Object.entries(start.slugs)) if (own.has(id)) slugs[id] = away;
  return slugs;
}

function awayOf(adjuster: Adjuster, size: number, chance: () => number): number {
  const nominal = nominalTurns(adjuster);
  const wanted = Math.max(EIGHTH, toStep(size * share(chance), EIGHTH));
  const inwards = chance() < 0.5;
  const rooms = { in: adjuster.travelTurns - nominal - CLEAR_TURNS, out: nominal - CLEAR_TURNS };
  const turns = (room: number): number => Math.min(wanted, Math.max(EIGHTH, Math.floor(room / EIGHTH) * EIGHTH));
  return inwards ? turns(rooms.in) : -turns(rooms.out);
}

/** Lag and errors of what lies in the file, either way. Which way X runs belongs to the lesson. */
function benchLies(bench: Scenario['bench'], chance: () => number): Scenario['bench'] {
  const either = (figure: number, step: number, most: number): number => {
    const size = Math.min(most, toStep(Math.abs(figure) * share(chance), step));
    return figure === 0 ? 0 : chance() < 0.5 ? size : -size;
  };
  return {
    ...bench,
    phaseLagDegrees: either(bench.phaseLagDegrees, 1, MOST_LAG_DEGREES),
    dialErrorHz: either(bench.dialErrorHz, DIAL_STEP_HZ, Number.POSITIVE_INFINITY),
    ...(bench.centreErrorHz === undefined
      ? {}
      : { centreErrorHz: either(bench.centreErrorHz, DIAL_STEP_HZ, Number.POSITIVE_INFINITY) }),
  };
}

/**
 * What nobody knows who has not looked, in volts peak: how tall the hum without the strap stands on the face, from one that is just plain to one that all but fills it, on
 * every receiver alike. Two figures, as no more are read. The Y gain is not dealt: the sheet asks for volts, and nobody can read them off a face that is out.
 */
function humDealt(setup: BenchSetup, chance: () => number): number {
  const hand = createHand(setup);
  makeSound(setup, hand);
  const [main] = workResponses(setup.receiver, setup.scenario);
  if (main !== undefined) setUpFor(setup, hand, main);
  turnAll(setup, hand, Object.fromEntries(setup.receiver.adjusters.map((a) => [a.id, nominalTurns(a)])));
  fillTube(setup, hand);
  const edgeToEdgeDiv = LEAST_HUM_DIV * (MOST_HUM_DIV / LEAST_HUM_DIV) ** chance();
  return Number(((edgeToEdgeDiv * hand.state.controls.yVoltsPerDiv) / 2).toPrecision(2));
}

function toStep(value: number, step: number): number {
  return Math.round(value / step) * step;
}

function share(chance: () => number): number {
  return LEAST_SHARE + (MOST_SHARE - LEAST_SHARE) * chance();
}

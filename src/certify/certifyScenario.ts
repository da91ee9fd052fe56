/**
 * Is a scenario solvable through the bench, by how much, and at what par? Pure: the same setup gives the same certificate everywhere; a worker may call it.
 *
 * (a) the sound set meets its own sheet; (b) while failed parts stand in it, no slug setting does, where the failure touches the curve; (c) with everything cured a
 * setting is found inside the stops; (d) its route gives the par; (e) a figure of difficulty; (f) the route, done without a slip, has every line of the score.
 * (g) as found, nothing less than a good eighth of a turn on one slug meets the sheet, unless the scenario says that its slugs are right.
 * That no setting meets a sheet is as sure as the starts and the crowd of crowdSearch.ts make it; `tests/certify/secondOpinion.test.ts` asks another one.
 */
import { CERTIFYING, DEALS_ON } from '../base/engine.ts';
import { once } from '../base/once.ts';
import { clamp, roundTo } from '../base/rounding.ts';
import { modelOf } from '../bench/benchModel.ts';
import { warmsUp } from '../bench/heat.ts';
import { shareBench } from '../bench/readersBench.ts';
import { type BenchSetup, designOf, initialState } from '../bench/setup.ts';
import { trueFinding } from '../bench/witness.ts';
import { hashOf } from '../files/hash.ts';
import { scenarioHash } from '../files/scenarioFile.ts';
import { trueDiagnosis } from '../grading/diagnosis.ts';
import { uncured } from '../grading/faultLines.ts';
import { grade } from '../grading/grade.ts';
import { lineIsMet } from '../grading/report.ts';
import { setUpLines } from '../grading/standing.ts';
import type { Deck } from '../physics/deck.ts';
import { cureOf } from '../receiver/faults/cure.ts';
import { faultEffects, faultMarks } from '../receiver/faults/faultEffects.ts';
import type { SetParts } from '../receiver/individualSet.ts';
import type { Adjuster } from '../receiver/receiver.ts';
import { workResponses } from '../receiver/responses.ts';
import { nominalTurns } from '../receiver/slugLaw.ts';
import type { CoreTurns } from '../receiver/statedResponse.ts';
import { readEndlessId } from '../scenario/endlessId.ts';
import { PAR_NOT_KNOWN } from '../scenario/par.ts';
import type { Certification, CertifiedLine, CertifyProblem, RouteStep } from './certificate.ts';
import { createDemands, type Demands, type Standing } from './demands.ts';
import { createHand, fillTube, makeSound, prove, setUpFor, turnAll } from './goodHand.ts';
import { setOf } from './knownSet.ts';
import { parOf } from './par.ts';
import { type Found, search, worstOf } from './search.ts';
import { lowestUncured } from './uncured.ts';

const TRIES = 7;
/** Turns of less than this are no step of a route. */
const LEAST_STEP = 0.02;

export interface CertifyOptions {
  /** hears how much of the work is done, from 0 to 1 */
  readonly onShare?: (share: number) => void;
  /** on the spot, for somebody who waits: the route goes to the best place that the set is known to have, and before the cure the search is short */
  readonly spot?: boolean;
  /** where the worst line as found is less far outside than this, in tolerances, nothing more is asked */
  readonly leastAstray?: number;
  /** where slugs alone come nearer than this while a part has failed, in tolerances outside, nobody asks how much nearer; left out: where they meet the sheet */
  readonly leastUncured?: number;
  /** on the spot: tolerances that the worst line of the best place is to be inside by, else it counts as out of reach; left out: it may lie anywhere inside */
  readonly room?: number;
  /** where slugs alone come nearer than this while a part has failed, in tolerances outside, it counts as nothing to see; left out: only where they meet the sheet */
  readonly refusedUncured?: number;
}

export function certifyScenario(
  setup: BenchSetup,
  {
    onShare = () => {},
    spot = false,
    leastAstray,
    leastUncured = 0,
    room = 0,
    refusedUncured = 0,
  }: CertifyOptions = {},
): Certification {
  const { receiver, deck, scenario } = setup;
  const printed = designOf(setup);
  const problems: CertifyProblem[] = [];
  const start = initialState(setup).slugs;
  const startTurns = Object.fromEntries(Object.entries(start).map(([id, slug]) => [id, slug.coreTurns]));
  const nominal = Object.fromEntries(receiver.adjusters.map((a) => [a.id, nominalTurns(a)]));
  const sound = searcher(setup, printed, { receiver, deck }, receiver.adjusters);
  const asNominal = sound.demands.standings(nominal);
  const outside = asNominal.filter((one) => one.excess > 0);
  for (const one of outside) problems.push({ code: 'nominalOutside', line: lineOf(one) });
  // Before all that costs more: a set that leaves too little room is refused whatever else it has.
  if (spot && room > 0 && lineOf(worstOf(asNominal)).excess > -room)
    return { ok: false, problems: [{ code: 'outOfReach', line: lineOf(worstOf(asNominal)) }] };

  onShare(0.05);
  const failed = faultEffects(receiver, deck, scenario.faults, []);
  const stuck = receiver.adjusters.filter((a) => start[a.id]?.cracked === true);
  // Where a diode gives nothing there is no trace that slugs could bring to the sheet.
  const dead = faultMarks(scenario.faults, { receiver, deck }).some((mark) => mark.kind === 'shorted');
  const touched = !dead && (failed.deck !== deck || stuck.length > 0);
  const free = receiver.adjusters.filter((a) => !stuck.includes(a));
  const broken = touched ? searcher(setup, printed, failed, free) : sound;
  const asFound = worstOf(broken.demands.standings(startTurns));
  if (leastAstray !== undefined && roundTo(asFound.excess, 0.001) < leastAstray)
    return { ok: false, problems: [{ code: 'nothingToDo' }] };
  // What an endless name makes has been handed out and kept: it is certified as it was when the names were given.
  const asNamed = readEndlessId(scenario.id) !== null;
  const trapsHz = receiver.adjusters.flatMap((a) => (a.trapHz === null ? [] : [a.trapHz]));
  const withoutCure = touched
    ? lowestUncured(broken, startTurns, nominal, free, {
        trapsHz,
        scenarioSeed: scenario.seed,
        spot,
        asNamed,
        enough: leastUncured,
      })
    : null;
  if (withoutCure !== null && (withoutCure.excess <= 0 || lineOf(withoutCure).excess < refusedUncured)) {
    problems.push({ code: 'nothingToSee', part: uncured(setup, [])[0] ?? scenario.faults[0]!.kind });
  }

  const slugsAsk = !asNamed && scenario.faults.length === 0 && scenario.slugsRight !== true;
  if (slugsAsk && mendedBySlip(sound.demands, startTurns, receiver.adjusters)) problems.push({ code: 'nothingToDo' });

  onShare(touched ? 0.4 : 0.05);
  // A new coil comes with its core half way in.
  const hand = createHand(setup);
  makeSound(setup, hand);
  const after = Object.fromEntries(Object.entries(hand.state.slugs).map(([id, slug]) => [id, slug.coreTurns]));
  const printedEnd: Found = { turns: nominal, worst: worstOf(asNominal), met: true, tries: 1 };
  const found = spot ? printedEnd : sound.find(after, TRIES);
  onShare(0.8);
  const best = spot ? printedEnd : bestEnd(sound.demands, found, after, nominal, receiver.adjusters);
  if (best.worst.excess > 0) problems.push({ code: 'outOfReach', line: lineOf(best.worst) });
  if (problems.length > 0) return { ok: false, problems };

  const route = routeOf(receiver.adjusters, after, best.turns);
  const responses = workResponses(receiver, scenario);
  const par = parOf({
    route,
    traps: route.filter((step) => receiver.adjusters.some((a) => a.id === step.slug && a.kind === 'trap')).length,
    responses: responses.length,
    cures: scenario.faults.filter((fault) => cureOf(fault, receiver, deck).kind !== 'turn').length,
    proofs: scenario.proofs.length,
    warmsUp: warmsUp(receiver, scenario),
    asNamed,
    prepared: scenario.start.prepared,
  });
  // A time limit is no use to anybody when par takes longer.
  const seconds = scenario.timeLimitSeconds === null ? par.seconds : Math.min(par.seconds, scenario.timeLimitSeconds);
  const own = { turns: par.turns, seconds };
  // Graded against its own par, not against what the file says.
  const graded = { ...setup, scenario: { ...scenario, par: own } };
  shareBench(graded, { from: setup });
  const done = points(graded, hand, best.turns);
  problems.push(...done.problems);
  if (problems.length > 0) return { ok: false, problems };
  return {
    ok: true,
    certificate: {
      format: 'haystack-certificate',
      version: 1,
      scenario: scenario.id,
      scenarioHash: scenarioHash({ ...scenario, par: PAR_NOT_KNOWN }),
      receiverHash: hashOf({ receiver: printed.receiver, deck: printed.deck }),
      engine: CERTIFYING,
      set: setOf(setup),
      nominal: asNominal.map(lineOf),
      asFound: lineOf(asFound),
      uncured: withoutCure === null ? null : lineOf(withoutCure),
      route,
      reached: lineOf(best.worst),
      tries: found.met ? found.tries : null,
      par: own,
      difficulty: difficultyOf(setup, asFound, route, found),
      points: done.points,
    },
  };
}

/** A slug nearer than this to where it belongs is not astray. */
const SLIP_TURNS = 0.125;

/** Whether the sheet is met as it stands, or with one slug turned by a slip either way. */
function mendedBySlip(demands: Demands, start: CoreTurns, adjusters: readonly Adjuster[]): boolean {
  const met = (turns: CoreTurns): boolean => worstOf(demands.standings(turns)).excess <= 0;
  if (met(start)) return true;
  return adjusters.some(({ id, travelTurns }) =>
    [-SLIP_TURNS, SLIP_TURNS].some((slip) => met({ ...start, [id]: clamp(start[id]! + slip, 0, travelTurns) })),
  );
}

function searcher(
  { receiver, scenario, engine = DEALS_ON }: BenchSetup,
  printed: SetParts,
  standing: SetParts,
  adjusters: readonly Adjuster[],
): {
  readonly demands: Demands;
  readonly deck: Deck;
  readAt(evenPoints: number): Demands;
  find(start: CoreTurns, mostTries: number): Found;
} {
  const responses = workResponses(receiver, scenario);
  const slugs = adjusters.map((a) => a.id);
  const { receiver: set, deck } = standing;
  const { toleranceFactor } = scenario;
  const make = (some: typeof responses, evenPoints?: number): Demands =>
    createDemands(set, deck, some, toleranceFactor, slugs, printed, evenPoints, modelOf(engine).probePulses);
  const demands = make(responses);
  // From the detector backwards: what comes later on the sheet is a part of what comes first.
  const stages = once(() => (responses.length < 2 ? [] : [...responses].reverse().map((one) => make([one]))));
  return {
    demands,
    deck,
    readAt: (evenPoints) => make(responses, evenPoints),
    find: (start, mostTries) =>
      search({ demands, stages, adjusters, start, seed: scenario.seed, mostTries, stopWhenMet: true }),
  };
}

/** The end of the shorter route of two: the place that was found, and the nominal one. */
function bestEnd(
  demands: Demands,
  found: Found,
  from: CoreTurns,
  nominal: CoreTurns,
  adjusters: readonly Adjuster[],
): { readonly turns: CoreTurns; readonly worst: Standing } {
  const printed = { turns: nominal, worst: worstOf(demands.standings(nominal)) };
  const own = { turns: found.turns, worst: found.worst };
  if (printed.worst.excess > 0) return own;
  if (!found.met) return printed;
  const length = (turns: CoreTurns): number =>
    adjusters.reduce((sum, { id }) => sum + Math.abs(turns[id]! - from[id]!), 0);
  return length(own.turns) < length(printed.turns) ? own : printed;
}

/** Traps first, then from the set's output backwards: the sheet lists slugs from the front. */
function routeOf(adjusters: readonly Adjuster[], from: CoreTurns, to: CoreTurns): RouteStep[] {
  const ordered = [
    ...adjusters.filter((a) => a.kind === 'trap'),
    ...adjusters.filter((a) => a.kind !== 'trap').reverse(),
  ];
  return ordered
    .map(({ id }) => ({ slug: id, turns: roundTo(to[id]! - from[id]!, 0.001) }))
    .filter((step) => Math.abs(step.turns) >= LEAST_STEP);
}

/** Does the route at the bench, with the first response last, and grades it. */
function points(
  setup: BenchSetup,
  hand: ReturnType<typeof createHand>,
  turns: CoreTurns,
): { readonly points: number; readonly problems: readonly CertifyProblem[] } {
  const { receiver, scenario } = setup;
  const problems: CertifyProblem[] = [];
  const lost = new Map<string, number>();
  for (const [i, response] of [...workResponses(receiver, scenario)].reverse().entries()) {
    setUpFor(setup, hand, response);
    if (i === 0) turnAll(setup, hand, turns);
    fillTube(setup, hand);
    const facts = hand.bench.facts(hand.state);
    for (const line of setUpLines(facts, receiver)) {
      const name = `${line.id} (${response.id})`;
      if (facts.response !== response.id || line.earned < 1)
        lost.set(name, facts.response === response.id ? line.earned : 0);
    }
  }
  for (const proof of scenario.proofs) {
    prove(proof, hand);
    hand.take(trueFinding(setup, hand.state, proof));
  }
  const diagnosis = trueDiagnosis(setup);
  if (diagnosis !== null) hand.take(diagnosis);
  hand.take({ type: 'signedOff' });
  for (const { event, reason } of hand.refused) problems.push({ code: 'refused', act: JSON.stringify(event), reason });
  const report = grade(setup, hand.events);
  for (const line of report.lines) {
    // Par is what is being made here; what it holds back follows from it.
    if (line.block === 'economy' || line.max === 0) continue;
    // Of the response the limits are what the sheet asks for; how far inside them a hand goes is its own affair.
    const short = line.block === 'response' ? !lineIsMet(line) : line.points < line.max;
    if (short && !lost.has(line.id)) lost.set(line.id, line.points / line.max);
  }
  for (const [line, share] of lost) problems.push({ code: 'lineLost', line, share: roundTo(share, 0.001) });
  return { points: report.total, problems };
}

function lineOf({ response, item, excess }: Standing): CertifiedLine {
  const { id, unit, measured, low, high } = item;
  return { response, line: id, unit, measured: roundTo(measured, 1e-4), low, high, excess: roundTo(excess, 0.001) };
}

/**
 * Slugs that are out, how far the worst line is out, whether the search needed more than one start, faults, and what of the bench tells lies; each has a share, together
 * 10 at most. A model of ours.
 */
function difficultyOf({ scenario }: BenchSetup, asFound: Standing, route: readonly RouteStep[], found: Found): number {
  const { bench, faults } = scenario;
  const lies = [bench.phaseLagDegrees !== 0, bench.xSwapped, bench.dialErrorHz !== 0, (bench.centreErrorHz ?? 0) !== 0];
  const parts =
    3 * clamp(route.length / 10, 0, 1) +
    2 * clamp(Math.log2(1 + Math.max(asFound.excess, 0)) / 5, 0, 1) +
    2 * clamp(((found.met ? found.tries : TRIES) - 1) / (TRIES - 1), 0, 1) +
    2 * clamp(faults.length / 2, 0, 1) +
    lies.filter(Boolean).length / 4;
  return roundTo(clamp(parts, 0, 10), 0.1);
}

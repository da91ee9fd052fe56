/**
 * Hands that try to have the mark without looking, and those that earn it. The first are given more than they could have: a bench that is set up rightly, phasing and
 * all, and a whole job done in no time. What they have not is eyes.
 */
import { RULES_VERSION, type RulesVersion } from '../../src/base/engine.ts';
import { seededRandom } from '../../src/base/random.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { partsAsked } from '../../src/bench/diagnosis.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { designOf, initialState } from '../../src/bench/setup.ts';
import { trueFinding } from '../../src/bench/witness.ts';
import { attemptSetup } from '../../src/certify/attempt.ts';
import { createDemands, type Demands } from '../../src/certify/demands.ts';
import { createHand, fillTube, type Hand, makeSound, prove, setUpFor, turnAll } from '../../src/certify/goodHand.ts';
import type { TimedEvent } from '../../src/files/runFile.ts';
import { trueDiagnosis } from '../../src/grading/diagnosis.ts';
import { grade } from '../../src/grading/grade.ts';
import { faultEffects } from '../../src/receiver/faults/faultEffects.ts';
import { workResponses } from '../../src/receiver/responses.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { asksDiagnosis, SET_UP_MATTERS } from '../../src/scenario/diagnosis.ts';
import { ANSWERS } from '../../src/scenario/findingAnswer.ts';
import type { ProofId } from '../../src/scenario/proofId.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { proveInTheDark } from './dimmer.ts';
import { bestDepth } from './oneDepth.ts';
import { onTheDesign, tallest } from './others.ts';
import { randomActor } from './randomActor.ts';
import { proveBySieve } from './sieve.ts';

export interface Mark {
  readonly passed: boolean;
  readonly points: number;
}
export const ADVERSARIES = [
  ...(['oneDepth', 'signer', 'ticker', 'flicker', 'copier', 'peeker', 'random', 'counter', 'peaker', 'mimic'] as const),
] as const;
/** Have looked at everything but what the proofs show: one tells them from memory, one makes them on a picture that shows nothing, one asks the card instead of the tube, one reckons them on the printed design. */
export const LAZY = ['parrot', 'dimmer', 'sieve', 'reckoner'] as const;
/** The technician as he is, one who rocks each slug through where it belongs, and one who goes stage by stage as the sheet has it. All read tube and needle as finely as the graticule is drawn. */
export const HONEST = ['technician', 'rocker', 'stager'] as const;
export type HandName = (typeof ADVERSARIES)[number] | (typeof LAZY)[number] | (typeof HONEST)[number];

/** Random actors over the whole course. */
const ACTORS = 1000;

export function markOf(name: HandName, id: string): Mark {
  const setup = setupOf(id);
  switch (name) {
    case 'oneDepth':
      return blind(setup, name, { turns: bestDepth(setup).turns });
    case 'signer':
      return blind(setup, name, {});
    case 'ticker':
      return blind(setup, name, {
        turns: setup.scenario.sealed ? {} : byTicks(setup),
        retries: !setup.scenario.sealed,
      });
    case 'flicker':
      return blind(setup, name, { turns: nominal(setup), mends: true });
    case 'copier':
      return copied(setup);
    case 'peeker':
      // The receiver's file is open to all, and the depth of a core lies open to the eye: each goes where the printed design has it.
      return blind(setup, name, { turns: nominal({ ...setup, ...designOf(setup) }) });
    case 'random':
      return bestOfRandom(setup);
    case 'counter':
      return byKeptRun(setup, false);
    case 'peaker':
      return blind(setup, name, { turns: tallest(setup) });
    case 'mimic':
      return mimicked(setup);
    case 'reckoner':
      return lazily(setup, reckonedRun);
    case 'parrot':
      return byKeptRun(setup, true);
    case 'dimmer':
      return lazily(setup, darkRun);
    case 'sieve':
      return lazily(setup, sieveRun);
    case 'technician':
      return marked(setup, demonstrate(setup).events);
    case 'rocker':
      return marked(setup, demonstrate(setup, { rocks: true }).events);
    case 'stager':
      return marked(setup, demonstrate(setup, { byStages: true }).events);
  }
}

interface Blind {
  /** where cores are put; left out: none is touched */
  readonly turns?: Readonly<Record<string, number>>;
  /** knows which part has failed */
  readonly mends?: boolean;
  /** says something else where the page asks again */
  readonly retries?: boolean;
}

function blind(setup: BenchSetup, name: HandName, { turns, mends, retries = false }: Blind): Mark {
  const hand = createHand(setup);
  if (mends === true) makeSound(setup, hand);
  atTheBench(setup, hand, turns ?? null);
  const chance = seededRandom(setup.scenario.seed + name.length * 7919);
  for (const proof of setup.scenario.proofs) {
    prove(proof, hand);
    for (let i = 0; i < (retries ? 2 : 1); i++) hand.take(guess(proof, chance));
  }
  if (asksDiagnosis(setup.scenario)) hand.take(guessedDiagnosis(setup, chance));
  hand.take({ type: 'signedOff' });
  return marked(setup, hand.events);
}

/** The set-up as the sheet has it, for each response, and the cores where the hand thinks that they belong. */
function atTheBench(setup: BenchSetup, hand: Hand, turns: Readonly<Record<string, number>> | null): void {
  hand.take({ type: 'cautionsAcknowledged' });
  if (setup.receiver.mains !== null) hand.take({ type: 'isolationSwitched', on: true });
  const [main] = workResponses(setup.receiver, setup.scenario);
  if (main === undefined) return;
  setUpFor(setup, hand, main);
  if (turns !== null) turnAll(setup, hand, turns);
  fillTube(setup, hand);
}

/** How large a figure of each kind may well be: divisions, decibels, volts. */
export const MOST_READ: Readonly<Record<ProofId, number>> = {
  ...{ halveLevel: 8, markersOffOn: 8, touchEarth: 8, swingPhase: 8, skirts: 8, liftCrystal: 8 },
  ...{ pipDown: 50, bias: 5 },
};

function guess(proof: ProofId, chance: () => number) {
  const answer = ANSWERS[proof][Math.floor(chance() * ANSWERS[proof].length)]!;
  return { type: 'findingStated', proof, answer, figure: Math.round(10 * MOST_READ[proof] * chance()) / 10 } as const;
}

/** One kind of thing, and of its names each by the toss of a coin that favours few; of a long tray, two at most. */
export function guessedDiagnosis(setup: BenchSetup, chance: () => number): BenchEvent {
  const some = <T>(list: readonly T[], most: number): readonly T[] =>
    list
      .map((one) => ({ one, at: chance() }))
      .sort((a, b) => a.at - b.at)
      .slice(0, 1 + Math.floor(most * chance()))
      .map(({ one }) => one);
  const slugs = setup.receiver.adjusters.map(({ id }) => id);
  const parts = partsAsked(setup).map(({ name }) => name);
  const nothing = { type: 'diagnosisStated', slugs: [], parts: [], setUp: [] } as const;
  const kind = Math.floor(4 * chance());
  if (kind === 0) return nothing;
  if (kind === 1) return { ...nothing, slugs: some(slugs, slugs.length) };
  if (kind === 2 && parts.length > 0) return { ...nothing, parts: some(parts, 2) };
  return { ...nothing, setUp: some(SET_UP_MATTERS, 2) };
}

export function marked(setup: BenchSetup, events: readonly TimedEvent[]): Mark {
  const { passed, total } = grade(setup, events);
  return { passed, points: total };
}

function nominal({ receiver }: Pick<BenchSetup, 'receiver'>): Readonly<Record<string, number>> {
  return Object.fromEntries(receiver.adjusters.map((a) => [a.id, nominalTurns(a)]));
}

/**
 * Everything that was done at an earlier attempt of a sealed scenario, findings and all, word for word, at the next attempt. A practice bench stands as it stood, so that a
 * copy of a whole run is a whole run: there the turns are copied, which is what a report tells, and the findings are guessed.
 */
function copied(setup: BenchSetup): Mark {
  const { scenario } = setup;
  if (!scenario.sealed) return blind(setup, 'copier', { turns: nominal(setup), mends: true });
  const next = attempt(scenario, 2);
  return marked(next, aCopy(next, goodRun(attempt(scenario, 1)).events).events);
}

/** Act by act what the technician was seen to do, and to say, at another attempt, or at another job on the same receiver. */
function mimicked(setup: BenchSetup): Mark {
  const { scenario } = setup;
  const here = scenario.sealed ? attempt(scenario, 2) : setup;
  const seen = scenario.sealed ? attempt(scenario, 1) : keptOf(setup);
  if (seen === null) return blind(here, 'mimic', {});
  return marked(here, aCopy(here, demonstrate(seen).events).events);
}

/** The whole job as it should be done, with all that was seen. */
export function goodRun(setup: BenchSetup): Hand {
  const hand = createHand(setup);
  makeSound(setup, hand);
  atTheBench(setup, hand, nominal(setup));
  for (const proof of setup.scenario.proofs) {
    prove(proof, hand);
    hand.take(trueFinding(setup, hand.state, proof));
  }
  const diagnosis = trueDiagnosis(setup);
  if (diagnosis !== null) hand.take(diagnosis);
  hand.take({ type: 'signedOff' });
  return hand;
}

/** What was done at one bench, act by act, at another. */
export function aCopy(setup: BenchSetup, events: readonly TimedEvent[]): Hand {
  const again = createHand(setup);
  for (const { atMs: _, ...event } of events) again.take(event);
  return again;
}

export function attempt(scenario: BenchSetup['scenario'], number: number): BenchSetup {
  const made = attemptSetup(shippedLibrary().receivers.get(scenario.receiver)!, scenario, number);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

/**
 * Who has kept a run of an earlier job on the same receiver. As he is: every core as deep as it came right there, and everything said as it was said there, diagnosis
 * too. `aligned`: the set is mended and every core stands where it belongs, and he says rightly what was wrong; but proofs are told as they were told there, without a look.
 */
function byKeptRun(setup: BenchSetup, aligned: boolean): Mark {
  const { scenario } = setup;
  const here = scenario.sealed ? attempt(scenario, 2) : setup;
  const kept = scenario.sealed ? attempt(scenario, 1) : keptOf(setup);
  if (kept === null) return blind(here, 'counter', { turns: nominal({ ...here, ...designOf(here) }) });
  return toldAs(here, kept, goodRun(kept).events, aligned);
}

/** At one bench what was said at another. */
export function toldAs(here: BenchSetup, kept: BenchSetup, told: readonly TimedEvent[], aligned: boolean): Mark {
  const hand = createHand(here);
  if (aligned) makeSound(here, hand);
  atTheBench(here, hand, nominal(aligned ? here : kept));
  const chance = seededRandom(here.scenario.seed + 7919);
  for (const proof of here.scenario.proofs) {
    prove(proof, hand);
    const said = told.find((event) => event.type === 'findingStated' && event.proof === proof);
    hand.take(said === undefined ? guess(proof, chance) : untimed(said));
  }
  const diagnosis = aligned ? trueDiagnosis(here) : told.find((event) => event.type === 'diagnosisStated');
  if (diagnosis) hand.take(untimed({ atMs: 0, ...diagnosis }));
  else if (asksDiagnosis(here.scenario)) hand.take(guessedDiagnosis(here, chance));
  hand.take({ type: 'signedOff' });
  return marked(here, hand.events);
}

function lazily(setup: BenchSetup, runOf: (here: BenchSetup) => Hand): Mark {
  const here = setup.scenario.sealed ? attempt(setup.scenario, 1) : setup;
  return marked(here, runOf(here).events);
}

export const darkRun = (here: BenchSetup): Hand => lazyRun(here, proveInTheDark);
export const sieveRun = (here: BenchSetup, rules: RulesVersion = RULES_VERSION): Hand =>
  lazyRun(here, (setup, hand, proof) => proveBySieve(setup, hand, proof, rules));

/** What is said is what the printed set would show at the same act by the same knobs. */
const reckonedRun = (here: BenchSetup): Hand => {
  const printed = goodRun(onTheDesign(here)).events;
  return lazyRun(here, (_, hand, proof) => {
    prove(proof, hand);
    const said = printed.find((event) => event.type === 'findingStated' && event.proof === proof);
    if (said !== undefined) hand.take(untimed(said));
  });
};

function lazyRun(here: BenchSetup, proves: typeof proveInTheDark): Hand {
  const hand = createHand(here);
  makeSound(here, hand);
  atTheBench(here, hand, nominal(here));
  for (const proof of here.scenario.proofs) proves(here, hand, proof);
  const diagnosis = trueDiagnosis(here);
  if (diagnosis !== null) hand.take(diagnosis);
  hand.take({ type: 'signedOff' });
  return hand;
}

function untimed({ atMs: _, ...event }: TimedEvent): BenchEvent {
  return event as BenchEvent;
}

/** Another job on the same receiver, on the same set where there is one, and with most proofs in common; null where there is none. */
function keptOf({ scenario: { id, receiver, proofs, set } }: BenchSetup): BenchSetup | null {
  const others = shippedLibrary().scenarios.filter((one) => one.receiver === receiver && one.id !== id);
  const common = (one: (typeof others)[number]): number =>
    (one.set === set ? 10 : 0) + one.proofs.filter((proof) => proofs.includes(proof)).length;
  const [best] = others.toSorted((a, b) => common(b) - common(a));
  return best === undefined ? null : setupOf(best.id);
}

const TICK_STEPS = [1, 0.5, 0.25] as const;
const TICK_ROUNDS = 4;

/** Slug by slug, this way and that, and what has more ticks is kept. */
function byTicks(setup: BenchSetup): Readonly<Record<string, number>> {
  const demands = demandsOf(setup);
  const start = initialState(setup).slugs;
  const turns: Record<string, number> = Object.fromEntries(
    setup.receiver.adjusters.map(({ id }) => [id, start[id]!.coreTurns]),
  );
  const open = (): number => demands.standings(turns).filter(({ excess }) => excess > 0).length;
  let left = open();
  for (let round = 0; round < TICK_ROUNDS && left > 0; round++) {
    for (const { id, travelTurns } of setup.receiver.adjusters) {
      if (start[id]!.cracked) continue;
      for (const step of TICK_STEPS) {
        for (const by of [step, -step]) {
          const before = turns[id]!;
          turns[id] = Math.min(Math.max(before + by, 0), travelTurns);
          const now = open();
          if (now < left) left = now;
          else turns[id] = before;
        }
      }
    }
  }
  return turns;
}

export function demandsOf(setup: BenchSetup): Demands {
  const { receiver, deck, scenario } = setup;
  const standing = faultEffects(receiver, deck, scenario.faults, []).deck;
  const slugs = receiver.adjusters.map((a) => a.id);
  const printed = setup.design ?? { receiver, deck };
  return createDemands(receiver, standing, workResponses(receiver, scenario), scenario.toleranceFactor, slugs, printed);
}

/** Of its share of the thousand. */
function bestOfRandom(setup: BenchSetup): Mark {
  const { scenarios } = shippedLibrary();
  const place = scenarios.findIndex(({ id }) => id === setup.scenario.id);
  let best: Mark = { passed: false, points: 0 };
  for (let n = place; n < ACTORS; n += scenarios.length) {
    const mark = marked(setup, randomActor(setup, 40_000 + n));
    if (mark.passed || (!best.passed && mark.points > best.points)) best = mark;
  }
  return best;
}

/**
 * Paths through the session: named acts, what each does to the facts, and the acts at the bench that bring that about, as plain data. The shortest
 * paths to every state are found by the model-based tester; the same paths are walked on the machine alone, on the real bench, and in the page.
 */

import { createTestModel } from '@xstate/test';
import { initialTransition, transition } from 'xstate';
import { getShortestPaths } from 'xstate/graph';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import type { Facts } from '../../src/bench/facts.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import { type Findings, trueFinding } from '../../src/bench/witness.ts';
import type { SetUpPart } from '../../src/receiver/receiver.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { PROOFS } from '../../src/scenario/proofId.ts';
import { SET_UP_PARTS, SETTLE_SECONDS, setUpCodes } from '../../src/session/missing.ts';
import type { SessionStage, SessionView } from '../../src/session/phase.ts';
import { type SessionSnapshot as Snapshot, viewOf } from '../../src/session/session.ts';
import { type SessionEvent, sessionMachine } from '../../src/session/sessionMachine.ts';
import { connectionActs, proofActs, safetyActs, setUpActs, stateAfter, yActs } from './acts.ts';
import { ALL_RIGHT, IN_LIMITS, NOTHING_RIGHT } from './fakeFacts.ts';

type PageEvent = 'BEGIN' | 'ASK_TO_SIGN' | 'KEEP_WORKING' | 'SUSPEND' | 'RESUME' | 'ABANDON' | 'REPORT';

/** One step of a path: what is done at the bench, what is asked of the session, how long nothing happens. */
export interface PathAct {
  readonly name: string;
  readonly bench: readonly BenchEvent[];
  readonly session: PageEvent | null;
  readonly restSeconds: number;
}

/** The session as plain data: its stage, and at work how far each phase is. */
export type Stands =
  | Exclude<SessionStage, 'working' | 'signing'>
  | { readonly signing: 'asking' | 'timeUp' }
  | { readonly working: Working };

export interface Working {
  readonly safety: 'open' | 'made';
  readonly connection: 'open' | 'made';
  readonly setUp: Readonly<Record<SetUpPart, 'wrong' | 'right'>>;
  readonly alignment: SessionView['alignment'];
  readonly proof: 'open' | 'proved';
}

export function standsAt({ stage, done, alignment, missing, timeUp }: SessionView): Stands {
  if (stage === 'signing') return { signing: timeUp === true ? 'timeUp' : 'asking' };
  if (stage !== 'working') return stage;
  const parts = SET_UP_PARTS.map((part) => {
    const codes: readonly string[] = setUpCodes(part);
    return [part, missing.setUp.some((code) => codes.includes(code)) ? 'wrong' : 'right'] as const;
  });
  return {
    working: {
      safety: done.safe ? 'made' : 'open',
      connection: done.connect ? 'made' : 'open',
      setUp: Object.fromEntries(parts) as Working['setUp'],
      alignment,
      proof: done.prove ? 'proved' : 'open',
    },
  };
}

export interface PathStep {
  readonly act: PathAct;
  /** how the session stands after it */
  readonly value: Stands;
  /** what the machine itself was told: for walking the path without a bench */
  readonly event: SessionEvent;
}

export interface SessionPath {
  readonly name: string;
  readonly steps: readonly PathStep[];
}

/** Acts of the model: when they make sense, and what they do to the facts. The rest of the facts stays as it was. */
interface ModelAct {
  readonly name: string;
  readonly when: (facts: Facts, snapshot: Snapshot) => boolean;
  readonly facts?: (facts: Facts) => Partial<Facts>;
  readonly session?: PageEvent;
  readonly restSeconds?: number;
}

const clipped = (facts: Facts): boolean => facts.rfConnected;
const atWork = (_: Facts, snapshot: Snapshot): boolean => snapshot.matches('working');
const allSetUp = (facts: Facts): boolean =>
  Object.keys(SET_UP).every((key) => same(facts[key as keyof Facts], ALL_RIGHT[key as keyof Facts]));
const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
/** Spoiling begins where all is right and nothing moves, so that the paths stay few. */
const calm = (facts: Facts, snapshot: Snapshot): boolean =>
  atWork(facts, snapshot) &&
  facts.powered &&
  facts.earthed &&
  allSetUp(facts) &&
  viewOf(snapshot).alignment !== 'turning';
const spoilt =
  (key: keyof Facts) =>
  (facts: Facts, snapshot: Snapshot): boolean =>
    atWork(facts, snapshot) &&
    facts.powered &&
    clipped(facts) &&
    facts.slugsTouched + facts.proofsDone.length > 0 &&
    !same(facts[key], SET_UP[key]);
const proofAdded = (facts: Facts, proof: Facts['proofsDone'][number]): Partial<Facts> => ({
  proofsDone: PROOFS.filter((one) => one === proof || facts.proofsDone.includes(one)),
});

const biasOff = (errorVolts: number): Facts['biases'] => [
  { at: 'AGC', errorVolts, toleranceVolts: 0.2, clamped: true },
];

const SET_UP: Partial<Facts> = {
  residualPhaseDegrees: 0,
  blanking: true,
  xDirectionAsSheet: true,
  spanCovers: true,
  biases: [{ at: 'AGC', errorVolts: 0, toleranceVolts: 0.2, clamped: true }],
  compressionDb: 0,
  detectedPeakVolts: 2,
  markersMissingHz: [],
  pipHeightRatio: 0.08,
  traceHeightDiv: 6,
  traceLit: true,
  traceOnScreen: true,
};
const LEADS: Partial<Facts> = {
  rfConnected: true,
  rfAtSheetPoint: true,
  rfTerminated: true,
  yAtSheetPoint: true,
  yTipAsSheet: true,
  xConnected: true,
  earthed: true,
  biasConnected: true,
};

const ACTS: readonly ModelAct[] = [
  { name: 'begin', session: 'BEGIN', when: (_, s) => s.matches('briefing') },
  {
    name: 'read the cautions',
    when: (f, s) => atWork(f, s) && !f.cautionsAcknowledged,
    facts: () => ({ cautionsAcknowledged: true }),
  },
  {
    name: 'put the isolating transformer in',
    when: (f, s) => atWork(f, s) && f.cautionsAcknowledged && !f.isolated,
    facts: () => ({ isolated: true }),
  },
  {
    name: 'clip the leads on',
    when: (f, s) => atWork(f, s) && f.cautionsAcknowledged && !clipped(f),
    facts: (f) => (f.isolated ? LEADS : { stopped: true }),
  },
  {
    name: 'switch on',
    when: (f, s) => atWork(f, s) && f.cautionsAcknowledged && !f.powered && (clipped(f) || !f.isolated),
    facts: (f) => (f.isolated ? { powered: true } : { powered: true, stopped: true }),
  },
  {
    name: 'take the isolating transformer out',
    when: (f, s) => calm(f, s) && f.slugsTouched === 0,
    facts: () => ({ isolated: false, stopped: true }),
  },
  {
    name: 'set up',
    when: (f, s) => atWork(f, s) && f.powered && clipped(f) && f.slugsTouched === 0 && !allSetUp(f),
    facts: () => SET_UP,
  },
  {
    name: 'turn a slug',
    when: (f, s) => calm(f, s) && f.proofsDone.length !== 1,
    facts: () => ({ slugsTouched: 1, secondsSinceSlugTurn: 0, proofsDone: [] }),
  },
  {
    name: 'let it rest',
    restSeconds: SETTLE_SECONDS,
    when: (_, s) => atWork(_, s) && viewOf(s).alignment === 'turning',
  },
  {
    name: 'prove',
    when: (f, s) => calm(f, s) && f.slugsTouched > 0 && f.proofsDone.length < PROOFS.length,
    facts: () => ({ proofsDone: PROOFS }),
  },

  // Each disturbance and its mending.
  { name: 'phase away', when: settledAndProved, facts: () => ({ residualPhaseDegrees: 5 }) },
  { name: 'phase back', when: spoilt('residualPhaseDegrees'), facts: () => ({ residualPhaseDegrees: 0 }) },
  { name: 'blanking off', when: settledAndProved, facts: () => ({ blanking: false }) },
  { name: 'blanking on', when: spoilt('blanking'), facts: () => ({ blanking: true }) },
  { name: 'bias away', when: settledAndProved, facts: () => ({ biases: biasOff(-1) }) },
  { name: 'bias back', when: spoilt('biases'), facts: () => ({ biases: biasOff(0) }) },
  { name: 'lift a crystal', when: settledAndProved, facts: () => ({ markersMissingHz: [45.75e6] }) },
  { name: 'plug it in again', when: spoilt('markersMissingHz'), facts: () => ({ markersMissingHz: [] }) },
  { name: 'flip the mirror', when: settledAndProved, facts: () => ({ xDirectionAsSheet: false }) },
  { name: 'flip it back', when: spoilt('xDirectionAsSheet'), facts: () => ({ xDirectionAsSheet: true }) },
  { name: 'narrow the sweep', when: settledAndProved, facts: () => ({ spanCovers: false }) },
  { name: 'open it again', when: spoilt('spanCovers'), facts: () => ({ spanCovers: true }) },
  {
    name: 'far too strong',
    when: settledAndProved,
    facts: () => ({ compressionDb: 6, traceOnScreen: false, pipHeightRatio: 0.01 }),
  },
  {
    name: 'as strong as before',
    when: spoilt('compressionDb'),
    facts: () => ({ compressionDb: 0, traceOnScreen: true, pipHeightRatio: 0.08 }),
  },
  {
    name: 'lift the earth strap',
    when: (f, s) => calm(f, s) && f.proofsDone.length === 0 && f.slugsTouched > 0,
    facts: () => ({ earthed: false }),
  },
  {
    name: 'put the strap back',
    when: (f, s) => atWork(f, s) && clipped(f) && !f.earthed,
    facts: (f) => ({ earthed: true, ...proofAdded(f, 'touchEarth') }),
  },

  // Stages and clock.
  {
    name: 'ask to sign',
    session: 'ASK_TO_SIGN',
    when: (f, s) => atWork(f, s) && (!f.cautionsAcknowledged || settledAndProved(f, s)),
  },
  { name: 'keep working', session: 'KEEP_WORKING', when: (_, s) => s.matches({ signing: 'asking' }) },
  {
    name: 'sign',
    when: (f, s) => (s.matches('signing') || settledAndProved(f, s)) && f.slugsTouched > 0,
    facts: () => ({ signedOff: true }),
  },
  {
    name: 'suspend',
    session: 'SUSPEND',
    when: (f, s) =>
      s.matches({ signing: 'asking' }) || settledAndProved(f, s) || (atWork(f, s) && !f.cautionsAcknowledged),
  },
  { name: 'resume', session: 'RESUME', when: (_, s) => s.matches('suspended') },
  {
    name: 'let the time run out',
    restSeconds: 3600,
    when: (f, s) => s.matches({ signing: 'asking' }) || settledAndProved(f, s),
  },
  { name: 'to the report', session: 'REPORT', when: (_, s) => s.matches('stopped') },
  { name: 'abandon', session: 'ABANDON', when: (_, s) => s.status === 'active' && !s.matches('working') },
];

function settledAndProved(facts: Facts, snapshot: Snapshot): boolean {
  return calm(facts, snapshot) && viewOf(snapshot).done.align && viewOf(snapshot).done.prove;
}

/** A time limit that the model's act of letting it run out reaches. */
export const TIME_LIMIT_SECONDS = 1800;

interface WalkedPath {
  readonly steps: readonly { readonly event: SessionEvent; readonly state: Snapshot }[];
}

type NamedEvent = SessionEvent & { readonly act: string };

/** The shortest paths that take every step of the model at least once, longer ones taking in the shorter. */
export function shortestPaths(setup: BenchSetup): readonly SessionPath[] {
  const benchActs = benchActsFor(setup);
  const { id, setUp } = mainResponse(setup.receiver);
  const input = {
    wants: { proofs: PROOFS, sheets: { [id]: setUp }, steps: [] },
    timeLimitSeconds: TIME_LIMIT_SECONDS,
    sealed: false,
  };
  const start = transition(sessionMachine, initialTransition(sessionMachine, input)[0], {
    type: 'FACTS',
    facts: NOTHING_RIGHT,
    atSeconds: 0,
  })[0];
  // The tester's own search is older than the machine's library and cannot run its raised events; the library's search can.
  const paths = createTestModel(sessionMachine as never).getPaths(
    (logic, options) => getShortestPaths(logic as never, options as never) as never,
    { fromState: start, events: eventsFrom, serializeState: stepKey } as never,
  ) as unknown as readonly WalkedPath[];
  return paths.map((path) => {
    // The first step stands for the start itself.
    const steps = path.steps
      .filter((step) => 'act' in step.event)
      .map((step): PathStep => {
        const { act: name, ...event } = step.event as NamedEvent;
        const model = ACTS.find((act) => act.name === name)!;
        const bench = benchActs[name] ?? [];
        if (model.facts !== undefined && bench.length === 0) throw new Error(`nothing at the bench does "${name}"`);
        const act: PathAct = { name, bench, session: model.session ?? null, restSeconds: model.restSeconds ?? 0 };
        return { act, value: standsAt(viewOf(step.state)), event: event as SessionEvent };
      });
    return { name: steps.map((step) => step.act.name).join(', '), steps };
  });
}

export const ACT_NAMES: readonly string[] = ACTS.map((act) => act.name);

function eventsFrom(snapshot: Snapshot): readonly NamedEvent[] {
  const { facts, elapsedSeconds } = snapshot.context;
  if (facts === null || snapshot.status !== 'active') return [];
  return ACTS.filter((act) => act.when(facts, snapshot)).map(
    ({ name, session, facts: change, restSeconds }): NamedEvent => {
      if (session !== undefined) return { type: session, act: name };
      if (restSeconds !== undefined) return { type: 'TICK', elapsedSeconds: elapsedSeconds + restSeconds, act: name };
      const moved = snapshot.context.slugMovedAtSeconds;
      const since = moved === null ? null : elapsedSeconds - moved;
      const after = { ...facts, secondsSinceSlugTurn: since, ...change?.(facts) };
      const findings = findingsAfter(name, after, snapshot.context.findings);
      return { type: 'FACTS', facts: after, atSeconds: elapsedSeconds, slugs: IN_LIMITS, findings, act: name };
    },
  );
}

/** Who proves says what was seen; an act that proves by the way is asked about. */
function findingsAfter(act: string, { proofsDone }: Facts, before: Findings): Findings {
  return Object.fromEntries(
    proofsDone.map((proof) => [proof, act === 'prove' ? 'right' : (before[proof] ?? 'asked')] as const),
  );
}

/** What the search tells apart: each way into each state, so that every step is walked and not only every state reached. */
function stepKey(snapshot: Snapshot, event?: NamedEvent, before?: Snapshot): string {
  return `${stateKey(snapshot)} ${event?.act ?? ''} ${before === undefined ? '' : stateKey(before)}`;
}

/** Two moments are the same state when machine and facts agree; time itself does not count. */
function stateKey(snapshot: Snapshot): string {
  const { context } = snapshot;
  return JSON.stringify([
    standsAt(viewOf(snapshot)),
    { ...context.facts, secondsSinceSlugTurn: null },
    context.findings,
  ]);
}

/** Each proof that the scenario asks for is an act and a word of what was seen. */
function provingActs(setup: BenchSetup, from: BenchState): readonly BenchEvent[] {
  const made: BenchEvent[] = [];
  for (const proof of setup.scenario.proofs) {
    made.push(...proofActs(proof, setup, stateAfter(setup, made, from)));
    made.push(trueFinding(setup, stateAfter(setup, made, from), proof));
  }
  return made;
}

/** What a hand does for each act, for one receiver: plain data. */
export function benchActsFor(setup: BenchSetup): Readonly<Record<string, readonly BenchEvent[]>> {
  const { receiver, scenario } = setup;
  const control = (
    name: Extract<BenchEvent, { type: 'controlSet' }>['control'],
    value: number | boolean,
  ): BenchEvent => ({
    type: 'controlSet',
    control: name,
    value,
  });
  const power: BenchEvent = { type: 'powerSwitched', on: true };
  const leads = connectionActs(setup).filter((act) => act.type !== 'powerSwitched');
  const made = stateAfter(setup, [...safetyActs(setup), ...leads, power], initialState(setup));
  const knobs = setUpActs(setup);
  const ready = stateAfter(setup, knobs, made);
  const y = yActs(setup, ready);
  const done = stateAfter(setup, y, ready);
  const phase = -scenario.bench.phaseLagDegrees;
  const bias = Math.abs(mainResponse(receiver).setUp.biases[0]?.volts ?? 0);
  const crystal = mainResponse(receiver).setUp.markersHz.at(-1)!;
  const slug = receiver.adjusters[0]!;
  const turn: readonly BenchEvent[] = [
    { type: 'toolTaken', tool: slug.head },
    { type: 'slugTurned', slug: slug.id, turns: 1 / 16 },
  ];
  const strap = done.leads.earth!;
  return {
    'read the cautions': [{ type: 'cautionsAcknowledged' }],
    'put the isolating transformer in': [{ type: 'isolationSwitched', on: true }],
    'take the isolating transformer out': [{ type: 'isolationSwitched', on: false }],
    'clip the leads on': leads,
    'switch on': [power],
    'set up': [...knobs, ...y],
    'turn a slug': turn,
    prove: provingActs(setup, stateAfter(setup, turn, done)),
    'phase away': [control('phasingDegrees', phase + 5)],
    'phase back': [control('phasingDegrees', phase)],
    'blanking off': [control('blanking', false)],
    'blanking on': [control('blanking', true)],
    'bias away': [control('biasAVolts', bias + 1)],
    'bias back': [control('biasAVolts', bias)],
    'lift a crystal': [{ type: 'crystalPulled', hz: crystal }],
    'plug it in again': [{ type: 'crystalPlugged', hz: crystal }],
    'flip the mirror': [control('mirror', !done.controls.mirror)],
    'flip it back': [control('mirror', done.controls.mirror)],
    'narrow the sweep': [control('spanHz', mainResponse(receiver).setUp.spanHz / 1.6)],
    'open it again': [control('spanHz', mainResponse(receiver).setUp.spanHz)],
    'far too strong': [control('levelDb', Math.min(0, mainResponse(receiver).setUp.levelDb + 36))],
    'as strong as before': [control('levelDb', mainResponse(receiver).setUp.levelDb)],
    'lift the earth strap': [{ type: 'leadRemoved', lead: 'earth' }],
    'put the strap back': [{ type: 'leadConnected', lead: 'earth', to: strap }],
    sign: [{ type: 'signedOff' }],
  };
}

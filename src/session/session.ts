/** The session as the page uses it: send what happened, read how it stands, keep it and take it up again. */

import { createActor, initialTransition, type SnapshotFrom, transition } from 'xstate';
import type { Facts } from '../bench/facts.ts';
import type { BenchSetup } from '../bench/setup.ts';
import type { Findings } from '../bench/witness.ts';
import type { SheetAsks } from '../grading/rules/rule.ts';
import { jobSheet } from '../receiver/jobSheet.ts';
import type { Scenario, ScenarioAids } from '../scenario/scenario.ts';
import type { Alignment } from './alignment.ts';
import type { Wants } from './missing.ts';
import type { SessionStage, SessionView } from './phase.ts';
import { type SessionEvent, secondsAtRest, sessionMachine } from './sessionMachine.ts';
import { standingAsTicked, standingOf } from './standing.ts';

export interface Session {
  /** true where the event meant something in the state of the moment */
  send(event: SessionEvent): boolean;
  view(): SessionView;
  /** plain JSON, to be kept beside the log of events */
  snapshot(): KeptSession;
  /** takes up what `snapshot` gave; false (and unchanged) where it is not one, or of another scenario */
  restore(kept: unknown): boolean;
}

export interface KeptSession {
  readonly format: 'haystack-session';
  readonly version: 1;
  readonly scenario: string;
  readonly machine: unknown;
}

export type SessionSnapshot = SnapshotFrom<typeof sessionMachine>;

export function createSession(setup: Pick<BenchSetup, 'receiver' | 'scenario'>): Session {
  const { sealed, timeLimitSeconds } = setup.scenario;
  const input = { wants: wantsOf(setup), timeLimitSeconds, sealed };
  let snapshot: SessionSnapshot = initialTransition(sessionMachine, input)[0];
  return {
    send(event) {
      if (snapshot.status !== 'active' || !snapshot.can(event)) return false;
      snapshot = transition(sessionMachine, snapshot, event)[0];
      return true;
    },
    view: () => viewOf(snapshot),
    snapshot: () => ({
      format: 'haystack-session',
      version: 1,
      scenario: setup.scenario.id,
      machine: JSON.parse(JSON.stringify(keptSnapshot(snapshot))) as unknown,
    }),
    restore(kept) {
      const restored = isKept(kept) && kept.scenario === setup.scenario.id ? snapshotFrom(kept.machine, input) : null;
      if (restored === null) return false;
      snapshot = restored;
      return true;
    },
  };
}

/**
 * How the session would stand with these facts: for a replay, where any moment may be asked for. `handsOff`: no slug is turned any more, so that whoever did the
 * work had done with the alignment, right or wrong.
 */
export function sessionViewAt(
  setup: Pick<BenchSetup, 'receiver' | 'scenario'>,
  facts: Facts,
  atSeconds: number,
  handsOff: boolean,
  findings: Findings,
): SessionView {
  // The seal is broken: what stands in a report may be known.
  const session = createSession({ ...setup, scenario: { ...setup.scenario, sealed: false } });
  session.send({ type: 'BEGIN' });
  session.send({ type: 'FACTS', facts, atSeconds, slugs: handsOff ? NOTHING_OFF : null, findings });
  return session.view();
}

const NOTHING_OFF: Alignment = { off: [], away: {}, moved: [] };

/** The aids that may be reached: in a sealed run, none. */
export function aidsWithin({ sealed, aids }: Scenario): Pick<ScenarioAids, 'hints' | 'toleranceMarks'> {
  return { hints: !sealed && aids.hints, toleranceMarks: !sealed && aids.toleranceMarks };
}

/** The phases look at bench and curve, and neither need show a part that has failed: whether one is left is said after signing. A sealed run says nothing at all. */
export function partsAreOpen({ sealed, faults }: Pick<Scenario, 'sealed' | 'faults'>): boolean {
  return !sealed && faults.length > 0;
}

function wantsOf({ receiver, scenario }: Pick<BenchSetup, 'receiver' | 'scenario'>): Wants {
  const sheets = Object.fromEntries(receiver.responses.map(({ id, setUp }) => [id, sheetAsks(setUp)]));
  return { proofs: scenario.proofs, sheets, steps: jobSheet(receiver, scenario).procedure.map(({ phase }) => phase) };
}

/** Only what is asked about: it is kept with the session. */
function sheetAsks({ source, carrierHz, spanHz, markersHz }: SheetAsks): SheetAsks {
  return { source, carrierHz, spanHz, markersHz };
}

/** The same object for the same snapshot: it is asked for many times a frame. */
const views = new WeakMap<SessionSnapshot, SessionView>();

export function viewOf(snapshot: SessionSnapshot): SessionView {
  const known = views.get(snapshot);
  if (known !== undefined) return known;
  const { facts, wants, slugs, findings, sealed, ticked } = snapshot.context;
  const view = {
    stage: stageOf(snapshot),
    ...(sealed
      ? standingAsTicked(ticked ?? [], wants)
      : standingOf(facts, wants, secondsAtRest(snapshot.context), slugs ?? null, findings ?? {})),
    timeUp: snapshot.matches({ signing: 'timeUp' }),
  };
  views.set(snapshot, view);
  return view;
}

/** Measurements of a sealed run are not stored, where anybody could read them; the store makes them again. */
function keptSnapshot(snapshot: SessionSnapshot): unknown {
  const kept = sessionMachine.getPersistedSnapshot(snapshot);
  if (!snapshot.context.sealed) return kept;
  return { ...kept, context: { ...snapshot.context, facts: null, slugs: null, findings: {} } };
}

function stageOf(snapshot: SessionSnapshot): SessionStage {
  const value = snapshot.value;
  return (typeof value === 'string' ? value : Object.keys(value)[0]) as SessionStage;
}

/** Open runs of earlier versions name the state of the work among the states of `working`. */
function topStateOf(kept: unknown): unknown {
  return typeof kept === 'object' && kept !== null && 'working' in kept ? 'working' : kept;
}

/** Open runs of earlier versions have no such ticks. */
function stepsIn(ticked: unknown, count: number): readonly number[] {
  if (!Array.isArray(ticked)) return [];
  return Array.from({ length: count }, (_, step) => step).filter((step) => ticked.includes(step));
}

function isKept(kept: unknown): kept is KeptSession {
  if (typeof kept !== 'object' || kept === null) return false;
  const { format, version, machine } = kept as Partial<KeptSession>;
  return format === 'haystack-session' && version === 1 && typeof machine === 'object' && machine !== null;
}

function snapshotFrom(
  machine: unknown,
  input: Parameters<typeof initialTransition<typeof sessionMachine>>[1],
): SessionSnapshot | null {
  try {
    // What is asked for comes from the scenario of today, not from the kept copy.
    const kept = machine as SessionSnapshot;
    const snapshot = {
      ...kept,
      value: topStateOf(kept.value),
      context: { ...kept.context, ...input, ticked: stepsIn(kept.context.ticked, input.wants.steps.length) },
    } as SessionSnapshot;
    // XState throws where the states of the snapshot are not states of the machine.
    const restored = createActor(sessionMachine, { snapshot, input }).getSnapshot();
    const { elapsedSeconds, slugMovedAtSeconds } = restored.context;
    const timesAreSound =
      Number.isFinite(elapsedSeconds) && (slugMovedAtSeconds === null || Number.isFinite(slugMovedAtSeconds));
    if (!timesAreSound) return null;
    viewOf(restored);
    return restored;
  } catch {
    return null;
  }
}

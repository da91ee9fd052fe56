/**
 * The log of a run: every act that the bench took, with its millisecond. Appending is the only way forward; an act that
 * the bench refuses, or whose time runs backwards, leaves the run as it was.
 */
import { applyEvent } from '../bench/applyEvent.ts';
import type { BenchEvent, BenchSound, Refusal } from '../bench/benchEvent.ts';
import type { BenchState } from '../bench/benchState.ts';
import { type BenchSetup, initialState } from '../bench/setup.ts';
import type { TimedEvent } from '../files/runFile.ts';
import { type Replayed, replay } from './replay.ts';

export interface Run {
  readonly setup: BenchSetup;
  /** the name that the learner chose to hand in under; null = none */
  readonly learner: string | null;
  readonly events: readonly TimedEvent[];
  readonly state: BenchState;
  /** characters of JSON that the events take, commas included */
  readonly eventChars: number;
}

/** The same shape as the bench's own answer, with the run that follows from it. */
export type Appended =
  | { readonly ok: true; readonly run: Run; readonly state: BenchState; readonly heard: readonly BenchSound[] }
  | { readonly ok: false; readonly reason: Refusal };

/** No run may grow beyond this; the file that holds it must stay inside RUN_FILE_LIMIT_CHARS. */
export const RUN_EVENTS_LIMIT_CHARS = 3_900_000;
/** What an hour may come to, and how much of it may be spent at once. */
const HOUR_CHARS = 1_900_000;
const BURST_CHARS = 400_000;
const HOUR_MS = 3_600_000;

export function createRun(setup: BenchSetup, learner: string | null): Run {
  return { setup, learner, events: [], state: initialState(setup), eventChars: 0 };
}

/** Takes one act. `atMs` is whole milliseconds since the run began, never less than that of the act before. */
export function appendEvent(run: Run, event: BenchEvent, atMs: number): Appended {
  const lastMs = run.events.at(-1)?.atMs ?? 0;
  if (!Number.isSafeInteger(atMs) || atMs < lastMs) return { ok: false, reason: 'badTime' };
  const timed: TimedEvent = { atMs, ...event };
  const eventChars = run.eventChars + JSON.stringify(timed).length + 1;
  const signs = event.type === 'signedOff' || event.type === 'diagnosisStated';
  if (eventChars > RUN_EVENTS_LIMIT_CHARS && !signs) return { ok: false, reason: 'logFull' };
  const applied = applyEvent(run.setup, run.state, event, atMs / 1000);
  if (!applied.ok) return applied;
  return {
    ok: true,
    run: { ...run, events: run.events.concat(timed), state: applied.state, eventChars },
    state: applied.state,
    heard: applied.heard,
  };
}

export interface Resumed {
  /** with the events up to the first that the bench refuses */
  readonly run: Run;
  /** that event; null = all went through */
  readonly refused: Replayed['refused'];
}

/** Takes up a run from its kept events, as far as they fit the bench. */
export function resumeRun(setup: BenchSetup, learner: string | null, recorded: readonly TimedEvent[]): Resumed {
  const { state, taken, refused } = replay(setup, recorded);
  const events = refused === null ? recorded : recorded.slice(0, taken);
  const eventChars = events.reduce((sum, event) => sum + JSON.stringify(event).length + 1, 0);
  return { run: { setup, learner, events, state, eventChars }, refused };
}

/**
 * How long continuous turning and dragging should be gathered into one event at `atMs`: 33 ms (30 a second) while the
 * log is short, longer as it nears the allowance of the hour, so that no act is ever lost for want of room.
 */
export function gatherMs(run: Run, atMs: number): number {
  const allowed = BURST_CHARS + (HOUR_CHARS - BURST_CHARS) * (atMs / HOUR_MS);
  const used = run.eventChars / allowed;
  if (used < 0.5) return 33;
  if (used < 1) return Math.round(33 + (used - 0.5) * 334);
  return 250;
}

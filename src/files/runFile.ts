/** A run as it is kept and handed in: who, when and which; the scenario whole, the events, and the score that was claimed. */
import type { BenchEvent } from '../bench/benchEvent.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** Longest name that a run is handed in under. */
export const LEARNER_CHARS = 80;

/** Milliseconds since the run began, whole, never decreasing. */
export type TimedEvent = { readonly atMs: number } & BenchEvent;

export interface ClaimedScore {
  readonly total: number;
  readonly passed: boolean;
  readonly lines: readonly { readonly id: string; readonly points: number }[];
}

export interface RunFile extends RunHead {
  readonly scenario: Scenario;
  /** the scenario as it stands in a file that was made when scenarios had an older version; left out: it is as `scenario` */
  readonly handed?: unknown;
  readonly events: readonly TimedEvent[];
  /** null while the run is not signed off */
  readonly claimed: ClaimedScore | null;
  /** hashes of events and head (`seal.ts`) */
  readonly seal: string;
}

/** All of a run file that says what it is about, and stands under the seal with the events. A key that is added here is under the seal, too. */
export interface RunHead {
  readonly format: 'haystack-run';
  readonly version: 2;
  readonly engine: string;
  /** the version of the rules that the claimed score was given by */
  readonly rules: number;
  /** the name or number that the learner chose to hand in under; null = none */
  readonly learner: string | null;
  /** the calendar day on which it was signed off, where it was: `2026-05-31` (ISO 8601); null = not signed, or not known */
  readonly day: string | null;
  /** a name that chance gave to this run, so that a copy can be told from a second run alike; null = none */
  readonly runId: string | null;
  /** of the scenario as it was handed out */
  readonly scenarioHash: string;
  readonly receiverHash: string;
}

/** A run as it is kept and handed in: the scenario whole, the events, and the score that was claimed. */
import type { BenchEvent } from '../bench/benchEvent.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** Milliseconds since the run began, whole, never decreasing. */
export type TimedEvent = { readonly atMs: number } & BenchEvent;

export interface ClaimedScore {
  readonly total: number;
  readonly passed: boolean;
  readonly lines: readonly { readonly id: string; readonly points: number }[];
}

export interface RunFile {
  readonly format: 'haystack-run';
  readonly version: 1;
  readonly engine: string;
  readonly scenario: Scenario;
  readonly scenarioHash: string;
  readonly receiverHash: string;
  readonly learner: string | null;
  readonly events: readonly TimedEvent[];
  /** chained hash of the events in order: tells a reordered or cut list from a changed one */
  readonly eventsHash: string;
  /** null while the run is not signed off */
  readonly claimed: ClaimedScore | null;
}

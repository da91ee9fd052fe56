/** What the store holds of a run: one that lies open, one that was signed off. */
import type { TimedEvent } from '../../files/runFile.ts';
import type { Scenario } from '../../scenario/scenario.ts';

/** A run that lies open: enough to stand exactly where the learner left it. */
export interface OpenRun {
  readonly scenarioId: string;
  readonly runId: string;
  readonly scenario: Scenario;
  readonly events: readonly TimedEvent[];
  readonly elapsedMs: number;
  /** the session machine's persisted snapshot, plain JSON */
  readonly session: unknown;
  readonly turns: number;
}

/** A run that was signed off. `text` is the run file as handed out. */
export interface KeptRun {
  readonly runId: string;
  readonly scenarioId: string;
  readonly total: number;
  readonly passed: boolean;
  /** order of keeping, counts up */
  readonly serial: number;
  readonly text: string;
}

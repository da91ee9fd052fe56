/** What the store holds: runs that lie open, runs that were signed off (their index apart from their files), and what was set aside. */
import type { TimedEvent } from '../../files/runFile.ts';
import type { Scenario } from '../../scenario/scenario.ts';

/** A run that lies open: enough to stand exactly where the learner left it. */
export interface OpenRun {
  readonly runId: string;
  readonly scenarioId: string;
  readonly learner: string | null;
  /** null: the run is sealed, and names its scenario by its hash alone until it is signed */
  readonly scenario: Scenario | null;
  /** of a sealed run's scenario as it was handed out; else null */
  readonly scenarioHash: string | null;
  /** the number of the attempt, from which a sealed run's scenario is made again; null: it was not dealt afresh */
  readonly attempt: number | null;
  readonly events: readonly TimedEvent[];
  readonly elapsedMs: number;
  /** the session machine's persisted snapshot, plain JSON */
  readonly session: unknown;
  readonly turns: number;
}

/** What the course tells of an open run; its events are read when somebody goes to the bench. */
export interface OpenHead {
  readonly runId: string;
  readonly scenarioId: string;
  readonly elapsedMs: number;
  readonly turns: number;
  /** the day's clock when it was last written, milliseconds; of two runs of one scenario the later one lies on the bench */
  readonly savedAtMs: number;
}

/** What keeps a line down most: a slug and how far it stands off, or a part that has failed. */
export type KeptCause =
  | { readonly kind: 'slug'; readonly slug: string; readonly turns: number }
  | { readonly kind: 'part'; readonly part: string };

/** One line of a kept run's score. */
export interface KeptLine {
  /** unique in the report: `G2:45750000` */
  readonly id: string;
  readonly points: number;
  /** null: not known, for a run that was kept before lines were counted one by one and has not been looked at since */
  readonly max: number | null;
  readonly cause: KeptCause | null;
}

/** A run that was signed off, as the index has it. The run file itself is read only when somebody wants it. */
export interface KeptRun {
  readonly runId: string;
  readonly scenarioId: string;
  readonly track: string;
  readonly receiver: string;
  readonly sealed: boolean;
  /** null until learners are named */
  readonly learner: string | null;
  readonly total: number;
  readonly passed: boolean;
  readonly lines: readonly KeptLine[];
  /** the day's clock at signing, milliseconds since 1970; null for a run that was kept before dates were */
  readonly signedAtMs: number | null;
  /** kind of set-up that the learner passed here without any help (`kindOfSetUp`); left out: none, or kept before that was counted */
  readonly setUp?: string;
  /** order of keeping, counts up */
  readonly serial: number;
}

/** A run about to be kept: the store counts it. */
export type FreshRun = Omit<KeptRun, 'serial'>;

/** Why something lies aside. */
export type AsideReason =
  /** the record is not what the store writes */
  | 'unreadable'
  /** the acts go through only so far; the run goes on from there */
  | 'stopsShort'
  /** not even the first act goes through, or the set is not here */
  | 'doesNotStart'
  /** its page failed on it, and the learner wanted a clear bench */
  | 'putAside';

/** Something that could not be used as it was, kept whole to be saved as a file. */
export interface Aside {
  readonly id: string;
  readonly reason: AsideReason;
  /** of which scenario, as far as that can be read */
  readonly scenarioId: string | null;
  readonly text: string;
}

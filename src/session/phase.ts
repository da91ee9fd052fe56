/** The five phases as the rail shows them, and the session's top-level states. */
import type { Alignment } from './alignment.ts';

export type Phase = 'safe' | 'connect' | 'setUp' | 'align' | 'prove';
export const PHASES: readonly Phase[] = ['safe', 'connect', 'setUp', 'align', 'prove'];

export type SessionStage = 'briefing' | 'working' | 'signing' | 'suspended' | 'graded' | 'abandoned' | 'stopped';

/** What the page needs to know of the session. A phase is done while its facts hold, and open again when they no longer do. */
export interface SessionView {
  readonly stage: SessionStage;
  readonly done: Readonly<Record<Phase, boolean>>;
  /** the first phase that is not done: where the learner is */
  readonly current: Phase;
  /** slug motion: nothing yet, turning now, or at rest since the last turn */
  readonly alignment: 'idle' | 'turning' | 'settled';
  /** what still keeps each phase from being done, as codes that describe/ has words for */
  readonly missing: Readonly<Record<Phase, readonly string[]>>;
  /** what is known of the slugs; null = nothing (never looked, or a sealed run) */
  readonly slugs: Alignment | null;
  /** sealed run: steps of the sheet that the learner has ticked, from 0, and nothing else is known here; null = the bench ticks them itself */
  readonly ticked: readonly number[] | null;
  /** stage `signing` because the time limit is reached: there is no way back, the page signs */
  readonly timeUp?: boolean;
}

/** What the store offers to the page: runs lying open, runs signed off, what was set aside, and what is wrong with the storage. */
import type { Aside, FreshRun, KeptLine, KeptRun, OpenHead, OpenRun } from './keptRuns.ts';
import type { ReadOpen } from './records.ts';

export type StorageTrouble =
  /** there is no database to be had */
  | 'memoryOnly'
  /** the last write found no room */
  | 'full'
  /** the last write failed for another reason */
  | 'failing'
  /** a tab with an older page holds the database and must be closed */
  | 'waiting'
  /** a tab with a newer page has taken the database over */
  | 'outdated';

export interface Logbook {
  /** never rejects */
  readonly ready: Promise<void>;
  isReady(): boolean;
  trouble(): StorageTrouble | null;
  /** of each scenario the one that lies on the bench */
  openRuns(): readonly OpenHead[];
  /** in the order in which they were kept */
  keptRuns(): readonly KeptRun[];
  asides(): readonly Aside[];
  /** the open run of a scenario as it stands in the database now, whichever tab wrote it */
  readOpen(scenarioId: string): Promise<ReadOpen | null>;
  /** the file of a kept run; null where it is not there */
  readText(runId: string): Promise<string | null>;
  /** false: it is kept in memory only */
  saveOpen(run: OpenRun): Promise<boolean>;
  /** as `saveOpen`, for a page that is going away: written before it returns */
  saveLast(run: OpenRun): void;
  dropOpen(runId: string): Promise<void>;
  /** Keeps a run that was signed off and only then lets go of the open one. Gives the name it is kept under: a run that is kept already is never overwritten. */
  keep(run: FreshRun, text: string): Promise<string>;
  /** false: the run is kept in memory only, and is lost with the page */
  isStored(runId: string): boolean;
  /** tries once more to write what is kept in memory only; true when nothing is left */
  storeAgain(): Promise<boolean>;
  /** gives the lines of a kept run their full marks and causes, once somebody has graded it anew */
  fillLines(runId: string, lines: readonly KeptLine[]): Promise<void>;
  /** sets something aside; an open run is replaced by what can be used of it, or taken away */
  setAside(what: Omit<Aside, 'id'>, instead: { readonly runId: string; readonly run: OpenRun | null }): Promise<void>;
  dropAside(id: string): Promise<void>;
  /** everything that is here, as one text */
  everything(): Promise<string>;
  /** told when what is here, or what is wrong, has changed; returns what stops it */
  subscribe(listener: () => void): () => void;
}

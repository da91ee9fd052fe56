/** What the course page may ask about scenarios that the user opens from files. */
import type { CourseCard } from '../../present/ports.ts';

/** A file that was not taken. */
export interface RefusedFile {
  readonly file: string;
  /** a sentence for each thing that is wrong with it */
  readonly reasons: readonly string[];
}

export interface TakenFiles {
  /** titles of what stands on the shelf now */
  readonly taken: readonly string[];
  readonly refused: readonly RefusedFile[];
}

export interface OwnPort {
  cards(): readonly CourseCard[];
  bring(files: readonly File[]): Promise<TakenFiles>;
  /** takes a scenario off the shelf; gives what puts it back */
  remove(scenarioId: string): Promise<() => Promise<void>>;
  /** the whole scenario as an address; null: it cannot be made */
  link(scenarioId: string): Promise<{ readonly address: string; readonly long: boolean } | null>;
  /** false: what was opened is lost with the page */
  isStored(): boolean;
  subscribe(listener: () => void): () => void;
}

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

/** A scenario of an evening. */
export interface EveningItem {
  readonly card: CourseCard;
  /** signed since the sheet was opened */
  readonly done: boolean;
  /** the code of the one that has to be signed first; null: it lies open */
  readonly after: string | null;
  /** minutes that the sheet gives for it; null: it states none */
  readonly minutes: number | null;
}

export interface EveningGroup {
  readonly hash: string;
  readonly title: string;
  readonly author: string | null;
  readonly minutes: number | null;
  /** how many have to be passed; null: no mark */
  readonly passMark: number | null;
  readonly items: readonly EveningItem[];
}

/** A sealed sheet on the shelf. */
export interface ExamPaper {
  readonly hash: string;
  readonly title: string;
  readonly minutes: number | null;
  readonly count: number;
  readonly state: 'sealed' | 'goingOn' | 'handedIn';
}

export interface OwnPort {
  /** nothing stands on the shelf */
  isEmpty(): boolean;
  exams(): readonly ExamPaper[];
  toExam(hash: string): void;
  /** only what has not begun, or is handed in; gives what puts it back */
  removeExam(hash: string): Promise<() => Promise<void>>;
  evenings(): readonly EveningGroup[];
  /** takes the sheet and its own scenarios off the shelf; gives what puts them back */
  removeEvening(hash: string): Promise<() => Promise<void>>;
  /** those that belong to no evening */
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

/** What the page of an exam may ask of the rest. */
import type { Whole } from '../../judge/whole.ts';

export interface ExamItem {
  readonly id: string;
  readonly code: string;
  readonly title: string;
  readonly state: 'open' | 'onBench' | 'signed' | 'timeUp' | 'handedIn' | 'waits';
  /** of `waits`: code of the one that comes first */
  readonly after: string;
  /** minutes that the sheet gives for it; null: it states none */
  readonly minutes: number | null;
}

export interface ExamPort {
  readonly title: string;
  readonly author: string | null;
  readonly minutes: number | null;
  readonly count: number;
  readonly candidates: 'numbers' | 'names';
  /** null: not opened yet */
  readonly sitting: {
    readonly candidate: string;
    readonly items: readonly ExamItem[];
    readonly signed: number;
    readonly several: boolean;
    readonly handedIn: boolean;
    /** what runs are worth is told when the exam is handed in */
    readonly heldBack: boolean;
    /** null: no mark */
    readonly passMark: number | null;
    /** calendar day of the opening */
    readonly day: string;
    /** null: no limit */
    leftMs(): number | null;
  } | null;
  /** false: the browser cannot open a seal */
  readonly canOpen: boolean;
  /** another exam is going on */
  readonly another: boolean;
  /** what stands in the way, in sentences; none: it is open */
  open(candidate: string, phrase: string): Promise<readonly string[]>;
  /** null: nothing has been handed in */
  readonly whole: Whole | 'working' | null;
  openReport(runId: string): void;
  toBench(id: string): void;
  handIn(): Promise<void>;
  save(): Promise<void>;
  toCourse(): void;
}

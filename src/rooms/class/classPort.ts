/** What the class room may ask of the rest. */
import type { BenchState } from '../../bench/benchState.ts';
import type { BenchDisplay } from '../../bench/display.ts';
import type { Report } from '../../grading/report.ts';
import type { ClassRow } from '../../judge/classList.ts';
import type { SittingRow } from '../../judge/sittings.ts';
import type { Receiver } from '../../receiver/receiver.ts';
import type { Scenario } from '../../scenario/scenario.ts';

export interface ClassPort {
  /** those that have been graded, in the order in which they came */
  readonly rows: readonly ClassRow[];
  /** those that have not */
  readonly waiting: readonly { readonly no: number; readonly file: string }[];
  /** exams that were brought, and what each comes to */
  readonly sittings: readonly SittingRow[];
  readonly isWorking: boolean;
  /** the file in hand */
  readonly inHand: string | null;
  /** what was wrong with what was brought last */
  readonly complaints: readonly string[];
  /** files that lie beside the runs as what was handed out */
  readonly handedOut: readonly { readonly title: string; readonly file: string }[];
  /** sheets under a seal that nobody has opened here yet */
  readonly sealed: readonly SealedSheet[];
  /** What speaks against it; nothing: it is open, and lies among what was handed out. */
  readonly openSealed: (file: string, phrase: string) => Promise<readonly string[]>;
  /** of what was handed out, and of sealed sheets */
  readonly takeBack: (file: string) => void;
  readonly bringDropped: (data: DataTransfer) => void;
  /** by the browser's own picker; calls `otherwise` at once where there is none for this page */
  readonly pick: (folder: boolean, otherwise: () => void) => void;
  readonly bringPicked: (files: readonly File[]) => void;
  readonly stop: () => void;
  readonly goOn: () => void;
  readonly clear: () => void;
  readonly takeAway: (no: number) => void;
  readonly saveFile: (no: number) => void;
  /** a run as it was graded, for its row; null: it cannot be had, or is not wanted any more */
  readonly look: (no: number, signal: AbortSignal) => Promise<OpenedRun | null>;
  readonly openReport: (no: number) => void;
  readonly saveCsv: () => void;
  readonly notes: NotesPort;
}

export interface SealedSheet {
  readonly title: string;
  readonly file: string;
}

export interface OpenedRun {
  readonly report: Report;
  readonly receiver: Receiver;
  readonly scenario: Scenario;
  /** as the bench was left */
  readonly state: BenchState;
  readonly display: BenchDisplay;
}

export interface NotesPort {
  /** null: the note on the class as a whole */
  of(row: ClassRow | null): string;
  write(row: ClassRow | null, text: string): void;
}

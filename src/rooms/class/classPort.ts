/** What the class room may ask of the rest. */
import type { ClassRow } from '../../judge/classList.ts';

export interface ClassPort {
  /** those that have been graded, in the order in which they came */
  readonly rows: readonly ClassRow[];
  /** those that have not */
  readonly waiting: readonly { readonly no: number; readonly file: string }[];
  readonly isWorking: boolean;
  /** the file in hand */
  readonly inHand: string | null;
  /** what was wrong with what was brought last */
  readonly complaints: readonly string[];
  readonly bringDropped: (data: DataTransfer) => void;
  readonly bringPicked: (files: readonly File[]) => void;
  readonly stop: () => void;
  readonly goOn: () => void;
  readonly clear: () => void;
  readonly takeAway: (no: number) => void;
  readonly saveFile: (no: number) => void;
  readonly openReport: (no: number) => void;
  readonly saveCsv: () => void;
  readonly notes: NotesPort;
}

export interface NotesPort {
  /** null: the note on the class as a whole */
  of(row: ClassRow | null): string;
  write(row: ClassRow | null, text: string): void;
}

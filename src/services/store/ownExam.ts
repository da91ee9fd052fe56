/** An exam on the shelf of one's own: the sealed file, and, once somebody has opened it, whose it is and how far it is. */

export interface OpenedExam {
  /** number or name */
  readonly candidate: string;
  /** the day's clock when it was opened: the time in all counts from here */
  readonly openedAtMs: number;
  /** hash of the sheet inside */
  readonly sheet: string;
  readonly order: 'listed' | 'any';
  readonly attempts: 'one' | 'several';
  readonly ownDeal: boolean;
  /** when what a run was worth is told: at handing in, or after each run */
  readonly results: 'atEnd' | 'each';
  /** for each scenario, null where none is stated; null: for none */
  readonly minutesEach: readonly (number | null)[] | null;
  /** how many have to be passed; null: no mark */
  readonly passMark: number | null;
  /** ids of its scenarios, in their order */
  readonly scenarios: readonly string[];
  /** handed in: nothing of it can be done any more */
  readonly handedIn: boolean;
}

export interface OwnExam {
  /** of the sealed file's text */
  readonly hash: string;
  readonly title: string;
  readonly author: string | null;
  readonly minutes: number | null;
  readonly count: number;
  readonly candidates: 'numbers' | 'names';
  /** the sealed file */
  readonly text: string;
  readonly addedAtMs: number;
  readonly opened: OpenedExam | null;
}

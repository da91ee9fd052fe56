/** The sheet of an evening on the shelf of one's own: what the course shows of it. Its scenarios stand beside it, each by itself. */

export interface OwnEvening {
  /** of the file's text */
  readonly hash: string;
  readonly title: string;
  readonly author: string | null;
  readonly order: 'listed' | 'any';
  readonly minutes: number | null;
  /** for each scenario, null where none is stated; left out: for none */
  readonly minutesEach?: readonly (number | null)[] | undefined;
  /** how many have to be passed; left out: no mark */
  readonly passMark?: number | undefined;
  /** ids of its scenarios, in their order */
  readonly scenarios: readonly string[];
  readonly addedAtMs: number;
}

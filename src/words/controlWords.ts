/** The words that a table of controls must have: a row without them does not compile. */
import type { ControlRows } from '../bench/controls/row.ts';

export interface StudWords {
  /** on the plate */
  readonly word: string;
  /** for a screen reader, where the word alone says too little */
  readonly spoken?: string;
}

export type ControlWordsFor<Rows extends ControlRows> = {
  readonly [Id in keyof Rows]: Rows[Id] extends {
    readonly kind: 'studs';
    readonly choices: readonly (infer Choice extends string)[];
  }
    ? { readonly label: string; readonly studs: Readonly<Record<Choice, StudWords>> }
    : { readonly label: string };
};

/** The words of any table, for those who do not know which. */
export type ControlWords = Readonly<
  Record<string, { readonly label: string; readonly studs?: Readonly<Record<string, StudWords>> }>
>;

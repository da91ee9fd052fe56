/** The words that a table of controls must have: a row without them does not compile. */
import type { ControlRows } from '../bench/controls/row.ts';

export interface PositionWords {
  /** on the plate */
  readonly word: string;
  /** for a screen reader, where the word alone says too little */
  readonly spoken?: string;
}

export type ControlWordsFor<Rows extends ControlRows> = {
  readonly [Id in keyof Rows]: Rows[Id] extends {
    readonly kind: 'positions';
    readonly choices: readonly (infer Choice extends string)[];
  }
    ? { readonly label: string; readonly positions: Readonly<Record<Choice, PositionWords>> }
    : { readonly label: string };
};

/** The words of any table, for those who do not know which. */
export type ControlWords = Readonly<
  Record<string, { readonly label: string; readonly positions?: Readonly<Record<string, PositionWords>> }>
>;

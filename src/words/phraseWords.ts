/** What a language says for each kind of phrase that a problem of a file is made of; a phrase inside another arrives as finished text. */
import type { Inner, PhraseKind, Phrases } from '../base/phrases.ts';

type Said<Figures extends readonly unknown[]> = {
  [I in keyof Figures]: Figures[I] extends Inner ? string : Figures[I];
};

export type PhraseWords = { readonly [K in PhraseKind]: (...of: Said<Phrases[K]>) => string };

/** What a language says of each kind of phrase that a problem of a file is made of; a phrase inside another comes as the text that it has become. */
import type { Inner, PhraseKind, Phrases } from '../base/phrases.ts';

type Said<Figures extends readonly unknown[]> = {
  [I in keyof Figures]: Figures[I] extends Inner ? string : Figures[I];
};

export type PhraseWords = { readonly [K in PhraseKind]: (...figures: Said<Phrases[K]>) => string };

/** The two ends of anything that can go wrong: a value, or every problem found. */
import type { Phrase } from './phrases.ts';

/** A place in a text, both counted from 1. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

/** One thing wrong with a file: where it is, what stood there, what was wanted. */
export interface Problem {
  readonly file: string;
  /** a JSON pointer (`/start/slugs/T1`), the name of an element of a deck, an option of a command, or `` for the whole file */
  readonly place: string;
  /** where in the text, as far as that is known */
  readonly at?: TextPlace;
  readonly found: Phrase;
  readonly wanted: Phrase;
}

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function good<T>(value: T): Result<T> {
  return { ok: true, value };
}

export function bad<T = never>(...problems: readonly Problem[]): Result<T> {
  return { ok: false, problems };
}

/** One line for programmers, in no language: people are told by `src/describe/problem.ts`. */
export function problemLine({ file, place, at, found, wanted }: Problem): string {
  const where = [file, ...(at === undefined ? [] : [`${at.line}:${at.column}`]), ...(place === '' ? [] : [place])];
  return `${where.join(', ')}: ${JSON.stringify(found)} / ${JSON.stringify(wanted)}`;
}

/** The two ends of anything that can go wrong: a value, or every problem found. */

/** One thing wrong with a file: where it is, what stood there, what was wanted. */
export interface Problem {
  readonly file: string;
  /** `line 12, column 5` in a deck, a JSON pointer (`/start/slugs/T1`) in a JSON file, or `` for the whole file */
  readonly place: string;
  readonly found: string;
  readonly wanted: string;
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

/** One line for a person: `file, place: found X, wanted Y`. */
export function problemLine(p: Problem): string {
  const where = p.place === '' ? p.file : `${p.file}, ${p.place}`;
  return `${where}: found ${p.found}, wanted ${p.wanted}`;
}

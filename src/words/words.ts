/**
 * Every word that people read or hear, as one value that is handed down: nobody else imports a language. A language is a folder beside `en/` whose values
 * have these types. The first page gets along with `FirstWords`; bench and report bring the rest with them,
 * and the command line what only it says.
 */
import type { first } from './en/first.ts';
import type { en } from './en/index.ts';
import type { terminal } from './en/terminal.ts';

export interface FirstWords extends Widened<typeof first> {}
export interface Words extends Widened<typeof en> {}
export interface TerminalWords extends Widened<typeof terminal> {}

/** The same shape with any text in it: English fixes what there is to be said, not how. */
export type Widened<T> = T extends string
  ? string
  : T extends (...args: infer A) => infer R
    ? (...args: A) => Widened<R>
    : T extends object
      ? { readonly [K in keyof T]: Widened<T[K]> }
      : T;

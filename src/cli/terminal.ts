/** Where the command line speaks. A command hands back its exit code; only main.ts touches the process. */
import { harmless } from '../base/harmless.ts';
import type { Problem } from '../base/result.ts';
import { problemSentence, type SaidProblem } from '../describe/problem.ts';
import type { TerminalWords } from '../words/words.ts';

export interface Terminal {
  readonly words: TerminalWords;
  out(text: string): void;
  err(text: string): void;
  exit(code: number): void;
  /** what comes in, line by line */
  lines?(): AsyncIterable<string>;
  /** somebody watches `err` on a screen */
  readonly watched?: boolean;
}

/** All well; a file has problems; the command was given wrongly, or names a file that is not there. */
export const EXIT = { good: 0, bad: 1, usage: 2 } as const;
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** The command was given wrongly: `program.ts` turns it into its sentence and exit code 2. */
export class UsageError extends Error {}

/** A problem that a command itself comes upon, in words that it has at hand. */
export function worded({ found, wanted, ...where }: SaidProblem): Problem {
  return { ...where, found: ['said', found], wanted: ['said', wanted] };
}

export function tellProblems(terminal: Terminal, problems: readonly Problem[]): ExitCode {
  for (const problem of problems) terminal.err(`${harmless(problemSentence(terminal.words, problem))}\n`);
  // A problem may stand in an option of the command instead of a file.
  if (problems.some(({ place }) => place.startsWith('--'))) return EXIT.usage;
  return problems.length === 0 ? EXIT.good : EXIT.bad;
}

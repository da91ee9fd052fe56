/** Grades a handed-in run again and says whether its claim holds: the whole way from the file's text to the verdict. */
import { type KnownBench, type Verdict, verifyText } from '../run/verify.ts';
import { claimOf, grade } from './grade.ts';

/** `find` gives the receiver that this bench knows by that name (and the hash of the scenario as it was handed out, where that is known). */
export function regrade(
  contents: string,
  file: string,
  find: (receiver: string, scenario: string) => KnownBench | null,
): Verdict {
  return verifyText(contents, file, find, (setup, events) => claimOf(grade(setup, events)));
}

/** Words for what is made of run files that were handed in, on the page and on the command line alike. */
import { format } from './numbers.ts';

const BYTES = { one: 'byte', other: 'bytes' };

export const judgingWords = {
  unknownScenario:
    'There is no scenario of that name here: it was judged by the one inside the file, which anybody may have written.',
  otherRules: (rules: number, then: number, now: number, passed: boolean): string =>
    `Graded by version ${rules} of the rules, by which it earns ${then}; by those of today it earns ${now}: ${passed ? 'passed' : 'not passed'}.`,
  nameNotSealed: 'The name is not under the seal: a file of the first version.',
  sameAs: (file: string): string => `The same actions as in ${file}.`,
} as const;

/** What is wrong with a file before anybody looks at what it says. */
export const textFileWords = {
  tooLarge: (bytes: number): string => format.counted(bytes, BYTES),
  atMost: (bytes: number): string => `at most ${format.counted(bytes, BYTES)}`,
  binary: 'bytes that are not text',
  utf8: 'text in UTF-8',
  unreadable: (reason: string): string => `a file that cannot be read (${reason})`,
  readable: 'a file that can be read',
  stops: (reason: string): string => `a run that stops the bench (${reason})`,
  goes: 'a run that can be done again',
} as const;

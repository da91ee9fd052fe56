/** English: what the first page needs. */
import { courseWords, trackWords } from './course.ts';
import { endlessWords } from './endless.ts';
import { format } from './numbers.ts';
import { phaseNames, shellWords } from './shell.ts';
import { storeWords } from './store.ts';

export const first = {
  language: 'en-GB',
  rightToLeft: false as boolean,
  format,
  shell: shellWords,
  phases: phaseNames,
  course: courseWords,
  /** letter, title and blurb of a track by its id */
  track: trackWords,
  endless: endlessWords,
  store: storeWords,
} as const;

export default first;

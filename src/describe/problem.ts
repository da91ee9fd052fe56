/** One thing wrong with a file, as a line for people. What was found and wanted is the checker's own wording. */
import type { Problem } from '../base/result.ts';
import type { FirstWords } from '../words/words.ts';

export function problemSentence({ shell }: FirstWords, { file, place, found, wanted }: Problem): string {
  return shell.problem(place === '' ? file : shell.inFile(file, place), found, wanted);
}

/** One thing wrong with a file in words: where it is, what stood there, what was wanted. */
import type { Inner, Phrase } from '../base/phrases.ts';
import type { Problem } from '../base/result.ts';
import type { Words } from '../words/words.ts';

export interface SaidProblem {
  readonly file: string;
  readonly place: string;
  readonly found: string;
  readonly wanted: string;
}

export function saidPhrase(words: Words, [kind, ...figures]: Phrase): string {
  const said = figures.map((figure) => (isInner(figure) ? saidPhrase(words, figure.phrase) : figure));
  // Kind and figures belong together by their type, which the compiler loses as soon as they are apart.
  return (words.phrases[kind] as (...figures: readonly unknown[]) => string)(...said);
}

/** Each part as text of its own. */
export function saidProblem(words: Words, { file, place, at, found, wanted }: Problem): SaidProblem {
  const line = at === undefined ? '' : words.shell.inText(at.line, at.column);
  const where = place === '' ? line : line === '' ? place : words.shell.inFile(line, place);
  return { file, place: where, found: saidPhrase(words, found), wanted: saidPhrase(words, wanted) };
}

export function problemSentence(words: Words, problem: Problem): string {
  const { file, place, found, wanted } = saidProblem(words, problem);
  return words.shell.problem(place === '' ? file : words.shell.inFile(file, place), found, wanted);
}

function isInner(figure: unknown): figure is Inner {
  return typeof figure === 'object' && figure !== null && Object.hasOwn(figure, 'phrase');
}

/** Cuts the text of a deck into lines of words: title, comments, continuation, and the place of every word. */

import type { Phrase } from '../base/phrases.ts';
import type { Problem } from '../base/result.ts';
import type { DeckPlace } from './deck.ts';
import { wordPlace } from './deck.ts';

export interface Word extends DeckPlace {
  readonly text: string;
}

export const MAX_TEXT = 65_536;
const MAX_LINE = 1000;
/** Reading stops once there are more problems than this. */
export const MAX_PROBLEMS = 1000;

export interface DeckLines {
  readonly title: string;
  readonly lines: readonly (readonly Word[])[];
  readonly problems: readonly Problem[];
}

export function deckLines(text: string, file: string): DeckLines {
  const physical = (text.startsWith('\uFEFF') ? text.slice(1) : text).split(/\r\n|\n|\r/);
  const lines: Word[][] = [];
  const problems: Problem[] = [];
  const complain = (place: DeckPlace, found: Phrase, wanted: Phrase): void => {
    problems.push({ file, ...wordPlace(place), found, wanted });
  };
  for (let i = 1; i < physical.length && problems.length <= MAX_PROBLEMS; i++) {
    const raw = physical[i]!;
    const line = i + 1;
    if (raw.length > MAX_LINE) {
      complain({ line, column: MAX_LINE + 1 }, ['characters', raw.length], ['charactersInLine', MAX_LINE]);
      continue;
    }
    const words = wordsOf(raw, line);
    const first = words[0];
    if (first === undefined) continue;
    if (!first.text.startsWith('+')) {
      lines.push(words);
      continue;
    }
    const last = lines.at(-1);
    if (last === undefined) {
      complain(first, ['plusFirst'], ['lineToContinue']);
      continue;
    }
    if (first.text === '+') words.shift();
    else words[0] = { text: first.text.slice(1), line, column: first.column + 1 };
    for (const word of words) last.push(word);
  }
  return { title: (physical[0] ?? '').trim(), lines, problems };
}

/** Words between spaces and tabs, up to a `;`; none for a line that opens with `*`. */
function wordsOf(raw: string, line: number): Word[] {
  const words: Word[] = [];
  let from = -1;
  for (let at = 0; at <= raw.length; at++) {
    const letter = at < raw.length ? raw[at] : ';';
    const gap = letter === ' ' || letter === '\t' || letter === ';';
    if (!gap && from < 0) {
      if (words.length === 0 && letter === '*') return [];
      from = at;
    } else if (gap && from >= 0) {
      words.push({ text: raw.slice(from, at), line, column: from + 1 });
      from = -1;
    }
    if (letter === ';') break;
  }
  return words;
}

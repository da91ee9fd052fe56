/** Cuts the text of a deck into lines of words: title, comments, continuation, and the place of every word. */

import type { Problem } from '../base/result.ts';

export interface Word {
  readonly text: string;
  /** `line 3, column 8`, both from 1; a tab counts as one column */
  readonly place: string;
}

export const MAX_TEXT = 262_144;
export const MAX_LINE = 1000;

export interface DeckLines {
  readonly title: string;
  readonly lines: readonly (readonly Word[])[];
  readonly problems: readonly Problem[];
}

export function deckLines(text: string, file: string): DeckLines {
  const physical = (text.startsWith('\uFEFF') ? text.slice(1) : text).split(/\r\n|\n|\r/);
  const title = (physical[0] ?? '').trim();
  const lines: Word[][] = [];
  const problems: Problem[] = [];
  for (let i = 1; i < physical.length && problems.length <= 1000; i++) {
    const raw = physical[i]!;
    const number = i + 1;
    if (raw.length > MAX_LINE) {
      problems.push({
        file,
        place: `line ${number}, column ${MAX_LINE + 1}`,
        found: `${raw.length} characters`,
        wanted: `at most ${MAX_LINE} in a line`,
      });
      continue;
    }
    const start = raw.search(/\S/);
    if (start < 0 || raw[start] === '*') continue;
    const comment = raw.indexOf(';');
    const body = comment < 0 ? raw : raw.slice(0, comment);
    const words: Word[] = [];
    for (const match of body.matchAll(/\S+/g))
      words.push({ text: match[0], place: `line ${number}, column ${match.index + 1}` });
    const first = words[0];
    if (first === undefined) continue;
    if (!first.text.startsWith('+')) {
      lines.push(words);
      continue;
    }
    const last = lines.at(-1);
    if (last === undefined) {
      problems.push({
        file,
        place: first.place,
        found: '`+` with no line before it',
        wanted: 'a line that it continues',
      });
      continue;
    }
    if (first.text === '+') words.shift();
    else words[0] = { text: first.text.slice(1), place: `line ${number}, column ${start + 2}` };
    last.push(...words);
  }
  return { title, lines, problems };
}

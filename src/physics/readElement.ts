/** Reads one element line of a deck; the rules that need the whole deck are in deckProblems.ts. */

import type { NumberHint, Phrase } from '../base/phrases.ts';
import type { Problem, Result } from '../base/result.ts';
import { bad, good } from '../base/result.ts';
import type { DeckElement } from './deck.ts';
import { MAX_VALUE, MIN_VALUE, wordPlace } from './deck.ts';
import type { Word } from './deckWords.ts';
import { numberHint, readSpiceNumber } from './spiceNumber.ts';

const NAME = /^[A-Za-z][A-Za-z0-9_.:#-]{0,63}$/;
const NODE = /^[A-Za-z0-9_.:#+-]{1,64}$/;

const LETTERS = ['R', 'L', 'C', 'K', 'G', 'I'] as const;
const UNITS = { R: '\u03a9', L: 'H', C: 'F' } as const;

export function readElement(words: readonly Word[], file: string): Result<DeckElement> {
  const first = words[0]!;
  const given = first.text.charAt(0).toUpperCase();
  const kind = LETTERS.find((letter) => letter === given);
  const problems: Problem[] = [];
  const complain = (word: Word, found: Phrase, wanted: Phrase): void => {
    problems.push({ file, ...wordPlace(word), found, wanted });
  };
  if (kind === undefined) return bad({ file, ...wordPlace(first), found: quote(first.text), wanted: ['anElement'] });
  if (!NAME.test(first.text)) complain(first, quote(first.text), ['elementLetters']);
  const name = first.text;
  const text = (i: number): string => words[i]?.text ?? '';

  const enough = (count: number): boolean => {
    if (words.length < count)
      complain(words.at(-1)!, ['endOfLineAfter', cut(words.at(-1)!.text)], ['elementShape', kind, 'none']);
    return words.length >= count;
  };
  const exactly = (count: number): boolean => {
    if (words.length > count) complain(words[count]!, quote(text(count)), ['nothingMore', kind]);
    return enough(count) && words.length === count;
  };
  const checkNodes = (from: number, to: number): void => {
    for (let i = from; i <= to; i++) {
      if (!NODE.test(text(i))) complain(words[i]!, quote(text(i)), ['nodeLetters']);
    }
  };
  const number = (i: number, wanted: (hint: NumberHint) => Phrase, fits: (value: number) => boolean): number => {
    const value = readSpiceNumber(text(i));
    if (value === null || !fits(value)) complain(words[i]!, quote(text(i)), wanted(numberHint(text(i))));
    return value ?? Number.NaN;
  };
  const positive = (value: number): boolean => value >= MIN_VALUE && value <= MAX_VALUE;
  const done = (element: DeckElement): Result<DeckElement> =>
    problems.length === 0 ? good(element) : bad(...problems);

  switch (kind) {
    case 'R':
    case 'L':
    case 'C': {
      if (!exactly(4)) return bad(...problems);
      checkNodes(1, 2);
      const value = number(3, (hint) => ['deckValue', MIN_VALUE, MAX_VALUE, UNITS[kind], hint], positive);
      return done({ kind, name, nodes: [text(1), text(2)], value, places: words });
    }
    case 'K': {
      if (!exactly(4)) return bad(...problems);
      const value = number(
        3,
        (hint) => ['deckCoupling', hint],
        (k) => Math.abs(k) < 1,
      );
      return done({ kind: 'K', name, coils: [text(1), text(2)], value, places: words });
    }
    case 'G': {
      if (!exactly(6)) return bad(...problems);
      checkNodes(1, 4);
      const value = number(5, (hint) => ['deckSiemens', MIN_VALUE, MAX_VALUE, hint], positive);
      return done({ kind: 'G', name, nodes: [text(1), text(2)], control: [text(3), text(4)], value, places: words });
    }
    case 'I': {
      if (!enough(3)) return bad(...problems);
      checkNodes(1, 2);
      let at = 3;
      let dcAmps = 0;
      let value = 0;
      let phaseDegrees = 0;
      const isNumber = (i: number): boolean => readSpiceNumber(text(i)) !== null;
      const finite = (): boolean => true;
      const direct = (hint: NumberHint): Phrase => ['directAmps', hint];
      if (text(at).toLowerCase() === 'dc') {
        if (!enough(5)) return bad(...problems);
        dcAmps = number(4, direct, finite);
        at = 5;
      } else if (at < words.length && isNumber(at)) dcAmps = number(at++, direct, finite);
      if (text(at).toLowerCase() === 'ac') {
        at++;
        value = 1;
        if (at < words.length)
          value = number(
            at++,
            (hint) => ['alternatingAmps', hint],
            (amps) => amps >= 0 && amps <= MAX_VALUE,
          );
        if (at < words.length) phaseDegrees = number(at++, (hint) => ['phase', hint], finite);
      }
      if (at < words.length) complain(words[at]!, quote(text(at)), ['elementShape', kind, numberHint(text(at))]);
      return done({ kind: 'I', name, nodes: [text(1), text(2)], value, phaseDegrees, dcAmps, places: words });
    }
  }
}

function quote(text: string): Phrase {
  return ['quoted', cut(text)];
}

function cut(text: string): string {
  return text.length > 60 ? `${text.slice(0, 60)}...` : text;
}

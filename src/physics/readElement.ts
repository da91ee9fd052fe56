/** Reads one element line of a deck; the rules that need the whole deck are in deckProblems.ts. */

import type { Problem, Result } from '../base/result.ts';
import { bad, good } from '../base/result.ts';
import type { DeckElement } from './deck.ts';
import { MAX_VALUE, MIN_VALUE, placeName } from './deck.ts';
import type { Word } from './deckWords.ts';
import { numberHint, readSpiceNumber } from './spiceNumber.ts';

const NAME = /^[A-Za-z][A-Za-z0-9_.:#-]{0,63}$/;
const NODE = /^[A-Za-z0-9_.:#+-]{1,64}$/;

const SHAPE = {
  R: 'R<name> node node ohms',
  L: 'L<name> node node henries',
  C: 'C<name> node node farads',
  K: 'K<name> coil coil coupling',
  G: 'G<name> node node control control siemens',
  I: 'I<name> node node [[DC] amps] [AC [amps [degrees]]]',
} as const;

export function readElement(words: readonly Word[], file: string): Result<DeckElement> {
  const first = words[0]!;
  const kind = first.text.charAt(0).toUpperCase();
  const problems: Problem[] = [];
  const complain = (word: Word, found: string, wanted: string): void => {
    problems.push({ file, place: placeName(word), found, wanted });
  };
  if (!(kind in SHAPE))
    return bad({ file, place: placeName(first), found: quote(first.text), wanted: 'an element R, L, C, K, G or I' });
  if (!NAME.test(first.text))
    complain(first, quote(first.text), 'a name of letters, digits and _ . : # - (at most 64)');
  const name = first.text;
  const text = (i: number): string => words[i]?.text ?? '';

  const shape = SHAPE[kind as keyof typeof SHAPE];
  const enough = (count: number): boolean => {
    if (words.length < count) complain(words.at(-1)!, `the end of the line after ${quote(words.at(-1)!.text)}`, shape);
    return words.length >= count;
  };
  const exactly = (count: number): boolean => {
    if (words.length > count) complain(words[count]!, quote(text(count)), `nothing more: ${shape}`);
    return enough(count) && words.length === count;
  };
  const checkNodes = (from: number, to: number): void => {
    for (let i = from; i <= to; i++) {
      if (!NODE.test(text(i))) complain(words[i]!, quote(text(i)), 'a node name of letters, digits and _ . : # + -');
    }
  };
  const number = (i: number, wanted: string, fits: (value: number) => boolean): number => {
    const value = readSpiceNumber(text(i));
    if (value === null || !fits(value)) complain(words[i]!, quote(text(i)), `${wanted}${numberHint(text(i))}`);
    return value ?? Number.NaN;
  };
  const positive = (value: number): boolean => value >= MIN_VALUE && value <= MAX_VALUE;
  const done = (element: DeckElement): Result<DeckElement> =>
    problems.length === 0 ? good(element) : bad(...problems);

  switch (kind as keyof typeof SHAPE) {
    case 'R':
    case 'L':
    case 'C': {
      if (!exactly(4)) return bad(...problems);
      checkNodes(1, 2);
      const unit = kind === 'R' ? 'ohms' : kind === 'L' ? 'henries' : 'farads';
      const value = number(3, `a value from ${MIN_VALUE} to ${MAX_VALUE} ${unit}`, positive);
      return done({ kind: kind as 'R' | 'L' | 'C', name, nodes: [text(1), text(2)], value, places: words });
    }
    case 'K': {
      if (!exactly(4)) return bad(...problems);
      const value = number(3, 'a coupling between -1 and 1', (k) => Math.abs(k) < 1);
      return done({ kind: 'K', name, coils: [text(1), text(2)], value, places: words });
    }
    case 'G': {
      if (!exactly(6)) return bad(...problems);
      checkNodes(1, 4);
      const value = number(
        5,
        `a value from ${MIN_VALUE} to ${MAX_VALUE} siemens (for the other sign change the nodes round)`,
        positive,
      );
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
      if (text(at).toLowerCase() === 'dc') {
        if (!enough(5)) return bad(...problems);
        dcAmps = number(4, 'direct current in amps', finite);
        at = 5;
      } else if (at < words.length && isNumber(at)) dcAmps = number(at++, 'direct current in amps', finite);
      if (text(at).toLowerCase() === 'ac') {
        at++;
        value = 1;
        if (at < words.length)
          value = number(at++, 'alternating current in amps, not below zero', (amps) => amps >= 0 && amps <= MAX_VALUE);
        if (at < words.length) phaseDegrees = number(at++, 'a phase in degrees', finite);
      }
      if (at < words.length) complain(words[at]!, quote(text(at)), `${shape}${numberHint(text(at))}`);
      return done({ kind: 'I', name, nodes: [text(1), text(2)], value, phaseDegrees, dcAmps, places: words });
    }
  }
}

function quote(text: string): string {
  return `\`${text.length > 60 ? `${text.slice(0, 60)}...` : text}\``;
}

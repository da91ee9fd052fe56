/** Lettering of drawings that is set narrower where its place is too narrow for it: other languages have longer words. */
import { r1 } from './ink.ts';

/** px, about: a letter of 12 or 13 px lettering */
const LETTER_PX = 6.2;

export interface Squeezed {
  readonly textLength?: number;
  readonly lengthAdjust?: 'spacingAndGlyphs';
}

/** `room`: px that there are for the words */
export function squeezed(words: string, room: number): Squeezed {
  return words.length * LETTER_PX <= room ? {} : { textLength: r1(room), lengthAdjust: 'spacingAndGlyphs' };
}

/** The same for drawings made as strings. */
export function squeezedText(words: string, room: number): string {
  const { textLength } = squeezed(words, room);
  return textLength === undefined ? '' : ` textLength="${textLength}" lengthAdjust="spacingAndGlyphs"`;
}

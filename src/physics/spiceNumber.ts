/**
 * Numbers as SPICE writes them: an ordinary decimal number, an engineering suffix (t g meg k m u n p f, case does not
 * matter) and letters of a unit, which are ignored: 10pF, 1MEG, 4.7K, 3.3uH, 75ohm. As in SPICE a bare F is femto.
 * Suffixes that SPICE programs know beyond these (mil, a) would change the value silently and are refused.
 */

import type { NumberHint } from '../base/phrases.ts';

const NUMBER = /^([+-]?(?:\d+\.?\d*|\.\d+))(?:e([+-]?\d+))?([a-z]*)$/i;
const EXPONENT: Readonly<Record<string, number>> = { t: 12, g: 9, k: 3, m: -3, u: -6, n: -9, p: -12, f: -15 };

/** The value, or null when the word is not such a number (or too large for one). */
export function readSpiceNumber(word: string): number | null {
  if (word.length > 64) return null;
  const match = NUMBER.exec(word);
  if (match === null) return null;
  const [, digits = '', power = '0', tail = ''] = match;
  const letters = tail.toLowerCase();
  if (/^(mil|a|e)/.test(letters)) return null;
  const suffix = letters.startsWith('meg') ? 6 : (EXPONENT[letters.charAt(0)] ?? 0);
  const value = Number(`${digits}e${Number(power) + suffix}`);
  return Number.isFinite(value) ? value : null;
}

/** What other SPICE programs would take a refused word for; 'none' where they would refuse it too. */
export function numberHint(word: string): NumberHint {
  const tail = NUMBER.exec(word)?.[3]?.toLowerCase() ?? '';
  if (tail.startsWith('mil')) return 'mil';
  return tail.startsWith('a') ? 'atto' : 'none';
}

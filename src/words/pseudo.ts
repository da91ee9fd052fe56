/**
 * A made-up language for tests of the page: every text of a given language longer by about two fifths, accented and in brackets, so that what was not taken
 * from the words, does not fit or is glued together can be seen at a glance. Figures, their units and what is put in from outside stay as they are.
 */

import type { FigureWords, HandbookWords } from './handbook.ts';

const OPEN = '\u27e6';
const CLOSE = '\u27e7';
const LONGER = 1.4;
const FILLER = '~';

const PLAIN = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ';
const ACCENTED = [
  ...'\u00e5\u0183\u00e7\u00f0\u00e9\u0192\u011d\u0125\u00ee\u0135\u0137\u013c\u0271\u00f1\u00f6\u00fe\u01eb\u0155\u0161\u0163\u00fb\u1e7d\u0175\u1e8b\u00fd\u017e',
  ...'\u00c5\u0181\u00c7\u00d0\u00c9\u0191\u011c\u0124\u00ce\u0134\u0136\u013b\u1e40\u00d1\u00d6\u00de\u01ea\u0154\u0160\u0162\u00db\u1e7c\u0174\u1e8a\u00dd\u017d',
];
const ACCENT_OF: ReadonlyMap<string, string> = new Map([...PLAIN].map((letter, i) => [letter, ACCENTED[i]!]));

/** Signs of the handbook's texts: a figure put in later, and where a word of them leads to. */
const SIGN = /\{\w+\}|\]\(#?[\w-]+\)/u;

/** A figure with its unit, or a unit by itself. */
const FIGURE =
  /[+\u2212]?\d[\d.,:/]*(?: \d+\/\d+)?(?:\s?(?:V\/div|mV\/div|[pn\u00b5mkMG]?(?:Hz|[FH\u03a9SAV])|dB|div|%|\u00b0)(?![\p{L}]))?|(?<![\p{L}])(?:[kM]Hz|dB)(?![\p{L}])/u;

/** The words of another language, every text of them made strange. */
export function pseudoWords<W extends { readonly language: string; readonly rightToLeft: boolean }>(
  words: W,
  rightToLeft = false,
): W {
  const strange = strangeValue(words, []) as W;
  // en-XA and en-XB are the tags that the Unicode locale data keep for made-up English, the latter from right to left.
  return { ...strange, language: rightToLeft ? 'en-XB' : 'en-XA', rightToLeft };
}

/** The pages of a handbook: what tells pages, figures and trade words apart stays as it is. */
export function pseudoHandbook(book: HandbookWords): HandbookWords {
  const strange = strangeValue(book, []) as HandbookWords;
  return {
    ...strange,
    pages: strange.pages.map((page, i) => {
      const { id, figures } = book.pages[i]!;
      const named = page.figures.map((figure, k) => ({ ...figure, kind: figures[k]!.kind }) as FigureWords);
      return { ...page, id, figures: named };
    }),
  };
}

/** `given`: the arguments of the function that made the value. */
function strangeValue(value: unknown, given: readonly unknown[]): unknown {
  if (typeof value === 'string') return strangeText(value, given);
  if (typeof value === 'function') {
    return (...args: unknown[]) => strangeValue((value as (...args: unknown[]) => unknown)(...args), args);
  }
  if (Array.isArray(value)) return value.map((item) => strangeValue(item, given));
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, strangeValue(inner, given)]));
  }
  return value;
}

export function strangeText(text: string, given: readonly unknown[] = []): string {
  let strange = '';
  let letters = 0;
  for (const [piece, stays] of pieces(text, given)) {
    if (stays) strange += piece;
    else {
      letters += [...piece].filter((sign) => ACCENT_OF.has(sign)).length;
      strange += [...piece].map((sign) => ACCENT_OF.get(sign) ?? sign).join('');
    }
  }
  if (letters === 0) return text;
  return `${OPEN}${strange}${filler(Math.ceil(letters * (LONGER - 1)))}${CLOSE}`;
}

/** In words of six signs, so that long texts may wrap. */
function filler(signs: number): string {
  return Array.from({ length: signs }, (_, i) => (i % 7 === 6 && i < signs - 1 ? ' ' : FILLER)).join('');
}

/** What is strange already, signs and figures. */
const STAYS = new RegExp([`${OPEN}[^${OPEN}${CLOSE}]*${CLOSE}`, SIGN.source, FIGURE.source].join('|'), 'gu');

const wholeWords = (escapedTexts: readonly string[]): string =>
  `(?<![\\p{L}])(?:${escapedTexts.join('|')})(?![\\p{L}])`;

/** What of the text stays as it is, and what does not. */
function pieces(text: string, given: readonly unknown[]): (readonly [piece: string, stays: boolean])[] {
  const outside = given
    .flatMap((one) => (typeof one === 'object' && one !== null ? Object.values(one) : one))
    .flat()
    // A receiver that is handed in has hundreds of texts: those that are not here would only make the search for the others long.
    .filter((one): one is string => typeof one === 'string' && one.trim() !== '' && text.includes(one))
    .sort((a, b) => b.length - a.length)
    .map(escaped);
  // Making a search of one's own takes longer than most texts take to be searched.
  const stays = outside.length === 0 ? STAYS : new RegExp(`${wholeWords(outside)}|${STAYS.source}`, 'gu');
  const found: [string, boolean][] = [];
  let at = 0;
  for (const match of text.matchAll(stays)) {
    found.push([text.slice(at, match.index), false], [match[0], true]);
    at = match.index + match[0].length;
  }
  found.push([text.slice(at), false]);
  return found;
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
}

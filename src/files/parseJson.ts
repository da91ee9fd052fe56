/**
 * Reads JSON text from anywhere (a file, a paste, a link). Stricter than the built-in reader: it says line and column of what is wrong, refuses keys that
 * stand twice and the key `__proto__`, and stops early at its bounds, so that a hostile text costs little.
 * Grammar: RFC 8259. The result holds plain objects, arrays, strings, finite numbers, booleans and null.
 */
import type { Phrase } from '../base/phrases.ts';
import type { Problem, Result, TextPlace } from '../base/result.ts';
import { type Reading, resultOf } from './known.ts';
import { cut } from './schemaProblems.ts';

/** What is read at most; the reader stops where a bound is passed, before anything is made of the rest. */
export interface JsonLimits {
  readonly textCharacters: number;
  readonly values: number;
  readonly levels: number;
  /** of one list */
  readonly items: number;
  /** of one object */
  readonly keys: number;
  /** of one string or key */
  readonly characters: number;
}

/** Longest text that is looked at where the caller gives no bounds of his own. */
export const TEXT_LIMIT_CHARS = 1_048_576;
const FILE_LIMITS: JsonLimits = {
  ...{ textCharacters: TEXT_LIMIT_CHARS, values: 20_000, levels: 32, items: 20_000, keys: 20_000 },
  characters: TEXT_LIMIT_CHARS,
};
/** Of a scenario, a receiver or a sheet of them: no list in one is anywhere near as long, and none of these has as many values. */
const SMALL_LISTS = 500;
export const PIECE_LIMITS: JsonLimits = { ...FILE_LIMITS, values: 6000, items: SMALL_LISTS, keys: SMALL_LISTS };
export const SHEET_LIMITS: JsonLimits = { ...FILE_LIMITS, items: SMALL_LISTS, keys: SMALL_LISTS };
const KEY_PROBLEMS_LISTED = 50;

/** The one list of a file that may be long: the value of a key of the outermost object. */
export interface LongList {
  readonly key: string;
  readonly most: number;
  /** is handed each item as it is read, which then is not kept, and what stands before the list; reading stops where it answers false */
  take(item: unknown, index: number, before: Readonly<Record<string, unknown>>): boolean;
}

/** With `long`, its list comes back empty: whoever takes its items keeps what he wants of them. */
export function parseJson(
  text: string,
  file: string,
  limits: JsonLimits = FILE_LIMITS,
  long: LongList | null = null,
): Result<unknown> {
  return resultOf(readJson(text, file, limits, long));
}

/** As `parseJson`; keys that stand twice, or may not stand, leave the rest of the value known. */
export function readJson(
  text: string,
  file: string,
  limits: JsonLimits = FILE_LIMITS,
  long: LongList | null = null,
): Reading<unknown> {
  if (text.length > limits.textCharacters) {
    const wanted: Phrase = ['charactersAtMost', limits.textCharacters];
    return { value: null, problems: [{ file, place: '', found: ['characters', text.length], wanted }] };
  }
  const keyProblems: Problem[] = [];
  const lineColumn = createPlaces(text);
  try {
    const value = readText(text, limits, long, (at, found, wanted) => {
      if (keyProblems.length === KEY_PROBLEMS_LISTED) throw new Fault(at, ['moreSuchKeys'], wanted);
      keyProblems.push({ file, place: '', at: lineColumn(at), found, wanted });
    });
    return { value, problems: keyProblems };
  } catch (error) {
    if (!(error instanceof Fault)) throw error;
    const { found, wanted } = error;
    return { value: null, problems: [...keyProblems, { file, place: '', at: lineColumn(error.at), found, wanted }] };
  }
}

class Fault extends Error {
  readonly at: number;
  readonly found: Phrase;
  readonly wanted: Phrase;
  constructor(at: number, found: Phrase, wanted: Phrase) {
    super(wanted[0]);
    this.at = at;
    this.found = found;
    this.wanted = wanted;
  }
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON forbids them in a string, so they end the plain part
const PLAIN = /[^"\\\u0000-\u001f]*/y;

const LONE_HALF = /[\ud800-\udfff]/u;
const escaped = (half: string): string => `\\u${half.charCodeAt(0).toString(16)}`;

function readText(
  text: string,
  limits: JsonLimits,
  long: LongList | null,
  badKey: (at: number, found: Phrase, wanted: Phrase) => void,
): unknown {
  // A byte order mark is not JSON, but some editors leave one.
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  let valuesLeft = limits.values;

  const skip = (pattern: RegExp): number => {
    pattern.lastIndex = at;
    pattern.test(text);
    return pattern.lastIndex;
  };
  const found = (): Phrase =>
    at >= text.length ? ['endOfText'] : ['sign', String.fromCodePoint(text.codePointAt(at)!)];
  const fail = (wanted: Phrase): never => {
    throw new Fault(at, found(), wanted);
  };
  // Asked between all things: a pattern would cost more than it passes over.
  const space = (): void => {
    for (;;) {
      const code = text.charCodeAt(at);
      if (code !== 0x20 && code !== 0x0a && code !== 0x0d && code !== 0x09) return;
      at++;
    }
  };

  const readString = (): string => {
    const from = at;
    at++;
    let plain = true;
    for (;;) {
      at = skip(PLAIN);
      if (at - from - 1 > limits.characters) {
        throw new Fault(from, ['moreInString', limits.characters], ['shorter']);
      }
      const code = text.charCodeAt(at);
      if (code === 0x22) break;
      if (code !== 0x5c) fail(['restOfString']);
      plain = false;
      at++;
      if (text[at] === 'u') {
        if (!/^[0-9a-fA-F]{4}$/.test(text.slice(at + 1, at + 5))) fail(['fourHex']);
        at += 5;
      } else if (at < text.length && '"\\/bfnrt'.includes(text[at]!)) at++;
      else fail(['knownEscape']);
    }
    at++;
    if (plain) return text.slice(from + 1, at - 1);
    const said = JSON.parse(text.slice(from, at)) as string;
    // No UTF-8 can hold it, so two different files would have one hash (RFC 8785, 3.2.2.2, has it refused).
    const half = LONE_HALF.exec(said);
    if (half !== null) throw new Fault(from, ['written', escaped(half[0])], ['wholeSign']);
    return said;
  };

  const readNumber = (): number => {
    NUMBER.lastIndex = at;
    const match = NUMBER.exec(text);
    if (match === null) return fail(['digit']);
    const value = Number(match[0]);
    if (!Number.isFinite(value)) throw new Fault(at, ['written', match[0].slice(0, 40)], ['heldNumber']);
    at = NUMBER.lastIndex;
    return value;
  };

  const readWord = (word: string, value: boolean | null): boolean | null => {
    if (!text.startsWith(word, at)) fail(['value']);
    at += word.length;
    return value;
  };

  const readList = (
    depth: number,
    taken: LongList | null = null,
    before: Readonly<Record<string, unknown>> = {},
  ): unknown[] => {
    const list: unknown[] = [];
    const most = taken?.most ?? limits.items;
    at++;
    space();
    if (text[at] === ']') {
      at++;
      return list;
    }
    for (let index = 0; ; index++) {
      space();
      const itemAt = at;
      if (index === most) throw new Fault(itemAt, ['listLonger', most], ['shorterList']);
      const item = readValue(depth);
      if (taken === null) list.push(item);
      else if (!taken.take(item, index, before)) throw new Fault(itemAt, ['moreProblems'], ['none']);
      space();
      if (text[at] === ']') break;
      if (text[at] !== ',') fail(['commaOrListEnd']);
      at++;
    }
    at++;
    return list;
  };

  const readObject = (depth: number): Record<string, unknown> => {
    const object: Record<string, unknown> = {};
    at++;
    space();
    if (text[at] === '}') {
      at++;
      return object;
    }
    for (let count = 0; ; count++) {
      space();
      if (text[at] !== '"') fail(['keyInQuotes']);
      const keyAt = at;
      if (count === limits.keys) {
        throw new Fault(keyAt, ['objectLonger', limits.keys], ['fewerKeys']);
      }
      const key = readString();
      const twice = Object.hasOwn(object, key);
      if (key === '__proto__') badKey(keyAt, ['key', '__proto__'], ['anotherKey']);
      else if (twice) badKey(keyAt, ['keyTwice', cut(key, 40)], ['eachOnce']);
      space();
      if (text[at] !== ':') fail(['colon']);
      at++;
      space();
      const taken = long !== null && depth === 1 && key === long.key && !twice && text[at] === '[' ? long : null;
      const value = taken === null ? readValue(depth) : readList(depth + 1, taken, object);
      if (key !== '__proto__' && !twice) object[key] = value;
      space();
      if (text[at] === '}') break;
      if (text[at] !== ',') fail(['commaOrObjectEnd']);
      at++;
    }
    at++;
    return object;
  };

  const readValue = (depth: number): unknown => {
    space();
    if (--valuesLeft < 0) throw new Fault(at, ['moreValues', limits.values], ['smallerFile']);
    if (depth > limits.levels) throw new Fault(at, ['moreLevels', limits.levels], ['flatterFile']);
    switch (text[at]) {
      case '{':
        return readObject(depth + 1);
      case '[':
        return readList(depth + 1);
      case '"':
        return readString();
      case 't':
        return readWord('true', true);
      case 'f':
        return readWord('false', false);
      case 'n':
        return readWord('null', null);
      default:
        return '-0123456789'.includes(text[at] ?? ' ') ? readNumber() : fail(['value']);
    }
  };

  const value = readValue(0);
  space();
  if (at < text.length) fail(['nothingAfter']);
  return value;
}

/** Places of a text, asked for from its start to its end: the lines between are counted once. */
function createPlaces(text: string): (at: number) => TextPlace {
  let line = 1;
  let start = 0;
  let counted = 0;
  return (at) => {
    for (; counted < at; counted++) {
      if (text.charCodeAt(counted) !== 0x0a) continue;
      line++;
      start = counted + 1;
    }
    return { line, column: at - start + 1 };
  };
}

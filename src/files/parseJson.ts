/**
 * Reads JSON text from anywhere (a file, a paste, a link). Stricter than the built-in reader: it says line and column of what is wrong, refuses keys that
 * stand twice and the key `__proto__`, and stops early at its bounds, so that a hostile text costs little.
 * Grammar: RFC 8259. The result holds plain objects, arrays, strings, finite numbers, booleans and null.
 */
import { bad, good, type Problem, type Result } from '../base/result.ts';

/** Longest text that is looked at, and the most values in it, where the caller gives no bound of his own. */
export const TEXT_LIMIT_CHARS = 1_048_576;
const VALUE_LIMIT = 20_000;
/** Where a caller allows longer texts, they may hold one value for so many characters. */
const CHARS_PER_VALUE = 8;
const DEPTH_LIMIT = 32;
const KEY_PROBLEMS_LISTED = 50;

export function parseJson(
  text: string,
  file: string,
  limitChars: number = TEXT_LIMIT_CHARS,
  limitValues: number = limitChars > TEXT_LIMIT_CHARS ? Math.ceil(limitChars / CHARS_PER_VALUE) : VALUE_LIMIT,
): Result<unknown> {
  if (text.length > limitChars) {
    return bad({ file, place: '', found: `${text.length} characters`, wanted: `at most ${limitChars} characters` });
  }
  const keyProblems: Problem[] = [];
  try {
    const value = readText(text, limitValues, (at, found, wanted) => {
      if (keyProblems.length === KEY_PROBLEMS_LISTED) throw new Fault(at, 'still more such keys', wanted);
      keyProblems.push({ file, place: lineColumn(text, at), found, wanted });
    });
    return keyProblems.length === 0 ? good(value) : bad(...keyProblems);
  } catch (error) {
    if (!(error instanceof Fault)) throw error;
    return bad(...keyProblems, { file, place: lineColumn(text, error.at), found: error.found, wanted: error.wanted });
  }
}

class Fault extends Error {
  readonly at: number;
  readonly found: string;
  readonly wanted: string;
  constructor(at: number, found: string, wanted: string) {
    super(wanted);
    this.at = at;
    this.found = found;
    this.wanted = wanted;
  }
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON forbids them in a string, so they end the plain part
const PLAIN = /[^"\\\u0000-\u001f]*/y;
const SPACE = /[ \t\r\n]*/y;

function readText(
  text: string,
  valueLimit: number,
  badKey: (at: number, found: string, wanted: string) => void,
): unknown {
  // A byte order mark is not JSON, but some editors leave one.
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  let valuesLeft = valueLimit;

  const skip = (pattern: RegExp): number => {
    pattern.lastIndex = at;
    pattern.test(text);
    return pattern.lastIndex;
  };
  const found = (): string =>
    at >= text.length ? 'the end of the text' : JSON.stringify(String.fromCodePoint(text.codePointAt(at)!));
  const fail = (wanted: string): never => {
    throw new Fault(at, found(), wanted);
  };
  const space = (): void => {
    at = skip(SPACE);
  };

  const readString = (): string => {
    const from = at;
    at++;
    let plain = true;
    for (;;) {
      at = skip(PLAIN);
      const code = text.charCodeAt(at);
      if (code === 0x22) break;
      if (code !== 0x5c) fail('the rest of a string and its closing quote');
      plain = false;
      at++;
      if (text[at] === 'u') {
        if (!/^[0-9a-fA-F]{4}$/.test(text.slice(at + 1, at + 5))) fail('four hexadecimal digits after \\u');
        at += 5;
      } else if (at < text.length && '"\\/bfnrt'.includes(text[at]!)) at++;
      else fail('a known escape after the backslash');
    }
    at++;
    return plain ? text.slice(from + 1, at - 1) : (JSON.parse(text.slice(from, at)) as string);
  };

  const readNumber = (): number => {
    NUMBER.lastIndex = at;
    const match = NUMBER.exec(text);
    if (match === null) return fail('a digit');
    const value = Number(match[0]);
    if (!Number.isFinite(value)) throw new Fault(at, match[0].slice(0, 40), 'a number that can be held');
    at = NUMBER.lastIndex;
    return value;
  };

  const readWord = (word: string, value: boolean | null): boolean | null => {
    if (!text.startsWith(word, at)) fail('a value');
    at += word.length;
    return value;
  };

  const readList = (depth: number): unknown[] => {
    const list: unknown[] = [];
    at++;
    space();
    if (text[at] === ']') {
      at++;
      return list;
    }
    for (;;) {
      list.push(readValue(depth));
      space();
      if (text[at] === ']') break;
      if (text[at] !== ',') fail('a comma or the end of the list');
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
    for (;;) {
      space();
      if (text[at] !== '"') fail('a key in double quotes');
      const keyAt = at;
      const key = readString();
      space();
      if (text[at] !== ':') fail('a colon after the key');
      at++;
      const value = readValue(depth);
      if (key === '__proto__') badKey(keyAt, 'the key "__proto__"', 'another key');
      else if (Object.hasOwn(object, key)) badKey(keyAt, `the key ${shortened(key)} a second time`, 'each key once');
      else object[key] = value;
      space();
      if (text[at] === '}') break;
      if (text[at] !== ',') fail('a comma or the end of the object');
      at++;
    }
    at++;
    return object;
  };

  const readValue = (depth: number): unknown => {
    space();
    if (--valuesLeft < 0) throw new Fault(at, `more than ${valueLimit} values`, 'a smaller file');
    if (depth > DEPTH_LIMIT) throw new Fault(at, `more than ${DEPTH_LIMIT} levels`, 'a flatter file');
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
        return /[-0-9]/.test(text[at] ?? '') ? readNumber() : fail('a value');
    }
  };

  const value = readValue(0);
  space();
  if (at < text.length) fail('nothing more after the value');
  return value;
}

function shortened(key: string): string {
  return JSON.stringify(key.length > 40 ? `${key.slice(0, 39)}…` : key);
}

function lineColumn(text: string, at: number): string {
  let line = 1;
  let start = 0;
  for (let i = text.indexOf('\n'); i >= 0 && i < at; i = text.indexOf('\n', i + 1)) {
    line++;
    start = i + 1;
  }
  return `line ${line}, column ${at - start + 1}`;
}

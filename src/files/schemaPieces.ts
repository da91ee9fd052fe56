/** The bounded building blocks of our file formats. Every number and list in a file goes through one of these, and every text that has no pattern of its own. */
import * as v from 'valibot';

/** A finite number between two bounds, inclusive. */
export function number(min: number, max: number) {
  const range = `a number from ${min} to ${max}`;
  return v.pipe(v.number(range), v.minValue(min, range), v.maxValue(max, range));
}

export function integer(min: number, max: number) {
  const range = `a whole number from ${min} to ${max}`;
  return v.pipe(v.number(range), v.integer(range), v.minValue(min, range), v.maxValue(max, range));
}

export function yesOrNo() {
  return v.boolean('true or false');
}

/**
 * Words for people. It is shown as text and never as markup, so any sign may stand in it but those that cannot be seen: control characters,
 * line breaks and marks that turn the direction of writing.
 */
export function text(max: number) {
  const wanted = `text of 1 to ${max} characters without control characters, not blank`;
  return v.pipe(v.string(wanted), v.minLength(1, wanted), v.maxLength(max, wanted), v.regex(VISIBLE, wanted));
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to keep out
const VISIBLE = /^(?=.*\S)[^\u0000-\u001f\u007f-\u009f\u200e\u200f\u2028-\u202e\u2066-\u2069]*$/;

function name(pattern: RegExp, wanted: string, max: number) {
  return v.pipe(v.string(wanted), v.maxLength(max, wanted), v.regex(pattern, wanted));
}

/** File-name-like names of receivers, scenarios and tracks. */
export function fileId() {
  return name(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'lower-case letters and digits in words joined by hyphens, at most 40', 40);
}

/** Short names inside a receiver: slugs, test points, cans, detectors. */
export function shortId() {
  return name(/^[A-Za-z][A-Za-z0-9]*$/, 'a letter, then letters and digits, at most 12', 12);
}

export function elementName() {
  return name(/^[RLCKGIrlckgi][A-Za-z0-9_]+$/, 'the name of a deck element, such as "L1"', 24);
}

export function nodeName() {
  return name(/^[A-Za-z0-9_]+$/, 'the name of a deck node', 24);
}

/** A tag of BCP 47, as far as its shape goes. */
export function languageTag() {
  return name(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/, 'the tag of a language, such as "en" or "pt-BR"', 35);
}

/** Texts in other languages, by tag. */
export function byLanguage<T extends v.GenericSchema>(texts: T) {
  return v.pipe(v.record(languageTag(), texts), v.maxEntries(40, 'at most 40 languages'));
}

export function deckFile() {
  return name(/^[a-z0-9_-]+\.cir$/, 'the name of a deck beside this file, such as "network.cir"', 40);
}

export function list<T extends v.GenericSchema>(item: T, min: number, max: number) {
  const wanted = min === max ? `a list of ${min}` : `a list of ${min} to ${max}`;
  return v.pipe(v.array(item, wanted), v.minLength(min, wanted), v.maxLength(max, wanted));
}

/** One of a few words or numbers. */
export function oneOf<const T extends readonly (string | number)[]>(...choices: T) {
  return v.picklist(choices);
}

/** Any frequency that a sheet can name. */
export function hertz() {
  return number(1e3, 1e9);
}

/** A width or an error of frequency. */
export function hertzWide() {
  return number(0, 1e9);
}

/** The bounded building blocks of our file formats. Every number and list in a file goes through one of these, and every text that has no pattern of its own. */
import * as v from 'valibot';
import type { Phrase, Unit } from '../base/phrases.ts';
import { asMessage } from './schemaProblems.ts';

/** An object that has these keys and no others. */
export function object<const T extends v.ObjectEntries>(entries: T) {
  return v.strictObject(entries, asMessage(['formatKeys', Object.keys(entries)]));
}

/** A finite number between two bounds, inclusive; `unit` is what it is a figure of. */
export function number(min: number, max: number, unit: Unit = '') {
  const range = asMessage(['from', min, max, unit]);
  return v.pipe(v.number(range), v.minValue(min, range), v.maxValue(max, range));
}

export function integer(min: number, max: number, unit: Unit = '') {
  const range = asMessage(['wholeFrom', min, max, unit]);
  return v.pipe(v.number(range), v.integer(range), v.minValue(min, range), v.maxValue(max, range));
}

export function yesOrNo() {
  return v.boolean(asMessage(['yesOrNo']));
}

/**
 * Words for people. It is shown as text and never as markup, so any sign may stand in it but those that cannot be seen: control characters,
 * line breaks and marks that turn the direction of writing.
 */
export function text(max: number) {
  const wanted = asMessage(['text', max]);
  return v.pipe(v.string(wanted), v.minLength(1, wanted), v.maxLength(max, wanted), v.regex(VISIBLE, wanted));
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to keep out
const VISIBLE = /^(?=.*\S)[^\u0000-\u001f\u007f-\u009f\u200e\u200f\u2028-\u202e\u2066-\u2069]*$/;

function name(pattern: RegExp, phrase: Phrase, max: number) {
  const wanted = asMessage(phrase);
  return v.pipe(v.string(wanted), v.maxLength(max, wanted), v.regex(pattern, wanted));
}

/** File-name-like names of receivers, scenarios and tracks. */
export function fileId() {
  return name(/^[a-z0-9]+(-[a-z0-9]+)*$/, ['fileId'], 40);
}

/** Short names inside a receiver: slugs, test points, cans, detectors. */
export function shortId() {
  return name(/^[A-Za-z][A-Za-z0-9]*$/, ['shortId'], 12);
}

export function elementName() {
  return name(/^[RLCKGIrlckgi][A-Za-z0-9_]+$/, ['elementName'], 24);
}

export function nodeName() {
  return name(/^[A-Za-z0-9_]+$/, ['nodeName'], 24);
}

/** A tag of BCP 47, as far as its shape goes. */
export function languageTag() {
  return name(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/, ['languageTag'], 35);
}

/** Texts in other languages, by tag. */
export function byLanguage<T extends v.GenericSchema>(texts: T) {
  return v.pipe(v.record(languageTag(), texts), v.maxEntries(40, asMessage(['languagesAtMost', 40])));
}

export function deckFile() {
  return name(/^[a-z0-9_-]+\.cir$/, ['deckFile'], 40);
}

export function list<T extends v.GenericSchema>(item: T, min: number, max: number) {
  const wanted = asMessage(['listFrom', min, max]);
  return v.pipe(v.array(item, wanted), v.minLength(min, wanted), v.maxLength(max, wanted));
}

/** One of a few words or numbers. */
export function oneOf<const T extends readonly (string | number)[]>(...choices: T) {
  return v.picklist(choices);
}

/** Any frequency that a sheet can name. */
export function hertz() {
  return number(1e3, 1e9, 'Hz');
}

/** A width or an error of frequency. */
export function hertzWide() {
  return number(0, 1e9, 'Hz');
}

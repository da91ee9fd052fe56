/**
 * The sealed sheet of an exam: what everybody may see, and the sheet itself enciphered. How it is sealed stands in the file, so that any program can open it that is told the phrase:
 * a key by PBKDF2 with HMAC-SHA-256 (RFC 8018), the sheet under AES-256-GCM (NIST SP 800-38D) with the head as its associated data.
 */
import * as v from 'valibot';
import { bad, good, type Result } from '../base/result.ts';
import { canonicalJson } from './hash.ts';
import { bringForward, type FormatHistory } from './migrations.ts';
import { readJson } from './parseJson.ts';
import { saysFormat } from './saysFormat.ts';
import { integer, object, oneOf, text } from './schemaPieces.ts';
import { asMessage, listed, problemsOf } from './schemaProblems.ts';
import { withTextPlaces } from './textPlaces.ts';

const CONTENT_CHARS = 900_000;
const MOST_ROUNDS = 5_000_000;

const base64Url = (least: number, most: number) => {
  const wanted = asMessage(['base64Url']);
  return v.pipe(
    v.string(wanted),
    v.minLength(least, wanted),
    v.maxLength(most, wanted),
    v.regex(/^[A-Za-z0-9_-]+$/, wanted),
  );
};

export const sealedEveningSchema = object({
  format: v.literal('haystack-sealed-evening'),
  version: v.literal(1),
  title: text(60),
  author: v.exactOptional(text(80)),
  minutes: v.nullable(integer(5, 480)),
  count: integer(1, 20),
  candidates: oneOf('numbers', 'names'),
  seal: object({
    key: v.literal('PBKDF2-HMAC-SHA-256'),
    rounds: integer(100_000, MOST_ROUNDS),
    salt: base64Url(22, 64),
    cipher: v.literal('AES-256-GCM'),
    nonce: base64Url(16, 16),
  }),
  content: base64Url(24, CONTENT_CHARS),
});

export type SealedEvening = v.InferOutput<typeof sealedEveningSchema>;
/** What everybody may see. */
export type SealedHead = Omit<SealedEvening, 'seal' | 'content'>;

const HISTORY: FormatHistory = { format: 'haystack-sealed-evening', current: 1, migrations: {} };

export function readSealedEvening(contents: string, file: string): Result<SealedEvening> {
  const json = readJson(contents, file);
  if (json.value === null && json.problems.length > 0) return bad(...json.problems);
  const forward = bringForward(json.value, HISTORY, file);
  const read = forward.ok ? v.safeParse(sealedEveningSchema, forward.value) : null;
  const problems = [
    ...json.problems,
    ...(forward.ok ? [] : forward.problems),
    ...(read === null || read.success ? [] : problemsOf(read.issues, file)),
  ];
  if (problems.length > 0 || !read?.success) return bad(...withTextPlaces(listed(problems, file), file, contents));
  return good(read.output);
}

/** What is sealed along with the content, so that none of it can be put over another sheet. */
export function headText({ format, version, title, author, minutes, count, candidates }: SealedHead): string {
  return canonicalJson({ format, version, title, author, minutes, count, candidates });
}

/** What is said aloud has no capitals and no double spaces. */
export const phraseOf = (typed: string): string => typed.normalize('NFKC').trim().toLowerCase().replace(/\s+/gu, ' ');

export const isSealedText = (contents: string): boolean => saysFormat(contents, 'sealed-evening');

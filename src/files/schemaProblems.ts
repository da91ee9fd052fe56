/** Turns what the validator found into problems that a person can act on: where, what stood there, what was wanted. */
import type * as v from 'valibot';
import type { Phrase, Unit } from '../base/phrases.ts';
import type { Problem } from '../base/result.ts';

/** More problems of a file than this are not listed. */
export const PROBLEMS_LISTED = 200;

/** Each problem once: several checks of one value may want the same thing. */
export function problemsOf(issues: readonly v.BaseIssue<unknown>[], file: string): Problem[] {
  const seen = new Set<string>();
  const problems: Problem[] = [];
  for (const issue of issues) {
    if (problems.length > PROBLEMS_LISTED) break;
    for (const problem of isUnknownKey(issue) ? unknownKeys(issue, file) : [problemOf(issue, file)]) {
      const mark = JSON.stringify([problem.place, problem.wanted]);
      if (!seen.has(mark)) problems.push(problem);
      seen.add(mark);
    }
  }
  return listed(problems, file);
}

/** The list cut to its length, with a word at its end where it was longer. */
export function listed(problems: readonly Problem[], file: string): Problem[] {
  if (problems.length <= PROBLEMS_LISTED) return [...problems];
  const rest: Problem = { file, place: '', found: ['moreProblems'], wanted: ['none'] };
  return [...problems.slice(0, PROBLEMS_LISTED), rest];
}

function problemOf(issue: v.BaseIssue<unknown>, file: string): Problem {
  const path = (issue.path ?? []).map((step) => step.key as string | number);
  const wanted = wantedOf(issue);
  return { file, place: pointer(path), found: foundOf(issue, wanted), wanted };
}

/** The validator tells of one such key for each object; people are told of all. */
function unknownKeys(issue: v.BaseIssue<unknown>, file: string): Problem[] {
  const wanted = wantedOf(issue);
  const known = wanted[0] === 'formatKeys' ? wanted[1] : [];
  const last = issue.path?.at(-1) as v.ObjectPathItem;
  const path = (issue.path ?? []).slice(0, -1).map((step) => step.key as string | number);
  return Object.keys(last.input)
    .filter((key) => !known.includes(key))
    .slice(0, PROBLEMS_LISTED)
    .map((key) => {
      const value = (last.input as Readonly<Record<string, unknown>>)[key];
      // A note may stand in any object: it is what stands there that is wrong.
      if (key === 'note' && typeof value !== 'string')
        return { file, place: pointer([...path, key]), found: shown(value), wanted: ['noteText'] };
      return { file, place: pointer([...path, key]), found: ['key', cut(key, 60)], wanted };
    });
}

/** JSON pointer (RFC 6901). */
export function pointer(path: readonly (string | number)[]): string {
  return path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}

/** A value in few words. */
export function shown(value: unknown, unit: Unit = ''): Phrase {
  if (value === undefined) return ['nothing'];
  if (typeof value === 'string') return ['named', cut(value, 60)];
  if (typeof value === 'number') return ['amount', value, unit];
  if (Array.isArray(value)) return ['listOf', value.length];
  if (typeof value === 'object' && value !== null) return ['anObject'];
  return ['written', String(value)];
}

export function cut(text: string, most: number): string {
  return text.length > most ? `${text.slice(0, most - 1)}\u2026` : text;
}

/** What a piece of a schema wants, as the text that the validator takes for its message; `wantedOf` reads it. */
export function asMessage(phrase: Phrase): string {
  return JSON.stringify(phrase);
}

function foundOf(issue: v.BaseIssue<unknown>, wanted: Phrase): Phrase {
  return shown(issue.input, wanted[0] === 'from' || wanted[0] === 'wholeFrom' ? wanted[3] : '');
}

function wantedOf(issue: v.BaseIssue<unknown>): Phrase {
  if (isUnknownKey(issue)) return JSON.parse(issue.message) as Phrase;
  if (issue.input === undefined && issue.type === 'strict_object') return ['valueFor', keyIn(issue.expected)];
  if (issue.type === 'strict_object' || issue.type === 'record') return ['anObject'];
  if (issue.expected !== null && (issue.type === 'picklist' || issue.type === 'literal' || issue.type === 'variant')) {
    // a variant that is given something else altogether
    if (issue.expected === 'Object') return ['anObject'];
    return ['oneOf', choicesIn(issue.expected), ''];
  }
  return issue.message.startsWith('[') ? (JSON.parse(issue.message) as Phrase) : ['anotherValue'];
}

/** The validator writes what it expects as code does: `"a"`, or `("a" | 2)`. */
function choicesIn(expected: string): (string | number)[] {
  const each = expected.match(/"(?:[^"\\]|\\.)*"|-?\d[\d.e+-]*/g) ?? [];
  return each.map((one) => JSON.parse(one) as string | number);
}

function keyIn(expected: string | null): string {
  return expected === null ? '' : (JSON.parse(expected) as string);
}

function isUnknownKey(issue: v.BaseIssue<unknown>): boolean {
  return issue.type === 'strict_object' && issue.expected === 'never';
}

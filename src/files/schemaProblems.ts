/** Turns what the validator found into problems that a person can act on: where, what stood there, what was wanted. */
import type * as v from 'valibot';
import type { Problem } from '../base/result.ts';

/** More problems of a file than this are not listed. */
export const PROBLEMS_LISTED = 200;

/** Each problem once: several checks of one value may want the same thing. */
export function problemsOf(issues: readonly v.BaseIssue<unknown>[], file: string): Problem[] {
  const seen = new Set<string>();
  const problems: Problem[] = [];
  for (const issue of issues) {
    if (problems.length > PROBLEMS_LISTED) break;
    const problem = problemOf(issue, file);
    const mark = JSON.stringify([problem.place, problem.wanted]);
    if (!seen.has(mark)) problems.push(problem);
    seen.add(mark);
  }
  return listed(problems, file);
}

/** The list cut to its length, with a word at its end where it was longer. */
export function listed(problems: readonly Problem[], file: string): Problem[] {
  if (problems.length <= PROBLEMS_LISTED) return [...problems];
  const rest = { file, place: '', found: 'more problems than are listed', wanted: 'none' };
  return [...problems.slice(0, PROBLEMS_LISTED), rest];
}

export function problemOf(issue: v.BaseIssue<unknown>, file: string): Problem {
  const path = (issue.path ?? []).map((step) => step.key as string | number);
  return { file, place: pointer(path), found: foundOf(issue), wanted: wantedOf(issue) };
}

/** JSON pointer (RFC 6901). */
export function pointer(path: readonly (string | number)[]): string {
  return path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}

/** A value in few words. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'string') return JSON.stringify(value.length > 60 ? `${value.slice(0, 59)}…` : value);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  return String(value);
}

function foundOf(issue: v.BaseIssue<unknown>): string {
  if (isUnknownKey(issue)) return `the key ${shown(issue.path?.at(-1)?.key)}`;
  return shown(issue.input);
}

function wantedOf(issue: v.BaseIssue<unknown>): string {
  if (isUnknownKey(issue)) return 'only keys that the format has';
  if (issue.input === undefined && issue.type === 'strict_object') return `a value for ${issue.expected}`;
  if (issue.type === 'strict_object' || issue.type === 'record') return 'an object';
  if (issue.expected !== null && (issue.type === 'picklist' || issue.type === 'literal' || issue.type === 'variant')) {
    // a variant that is given something else altogether
    if (issue.expected === 'Object') return 'an object';
    const choices = issue.expected.replace(/^\((.*)\)$/, '$1').split(' | ');
    return choices.length > 1 ? `one of ${choices.join(', ')}` : choices[0]!;
  }
  return issue.message;
}

function isUnknownKey(issue: v.BaseIssue<unknown>): boolean {
  return issue.type === 'strict_object' && issue.expected === 'never';
}

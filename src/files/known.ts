/**
 * Checks over a file of which some places have been refused already: what stands there is not known, so nothing can be concluded from it, and everything else still can.
 * Whoever reads such a place is thrown out of his check, and the next check goes on.
 */
import type * as v from 'valibot';
import type { Problem, Result } from '../base/result.ts';

/** A value as far as it is known. Without problems it is whole; with problems it may be null, where nothing of it is known. */
export interface Reading<T> {
  readonly value: T | null;
  readonly problems: readonly Problem[];
}

class NotKnown extends Error {}

export function resultOf<T>({ value, problems }: Reading<T>): Result<T> {
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: value as T };
}

/** Does the check; what it would have to read and cannot ends it. */
export function asFarAsKnown(check: () => void): void {
  try {
    check();
  } catch (error) {
    if (!(error instanceof NotKnown)) throw error;
  }
}

/** The check for each item of a list, one by one. */
export function eachKnown<T>(list: () => readonly T[], check: (item: T, index: number) => void): void {
  asFarAsKnown(() => {
    const items = list();
    for (let i = 0; i < items.length; i++) asFarAsKnown(() => check(items[i]!, i));
  });
}

/** What `pick` has of each item; undefined where that is not known. */
export function picked<T, U>(list: () => readonly T[], pick: (item: T) => U): (U | undefined)[] {
  const all: (U | undefined)[] = [];
  eachKnown(list, (item, i) => {
    all[i] = pick(item);
  });
  // A place that was skipped is a hole, which is not looked at.
  return Array.from(all);
}

/** The list with each item made anew; an item that cannot be is not known in the new list either. */
export function mappedAsKnown<T, U>(list: readonly T[], make: (item: T) => U): U[] {
  const made = Array<U>(list.length);
  for (let i = 0; i < list.length; i++) {
    refuse(made, i);
    asFarAsKnown(() => Object.defineProperty(made, i, { value: make(list[i]!), enumerable: true, configurable: true }));
  }
  return made;
}

/** A copy of the outermost object with some members made anew, each as far as it can be. */
export function withMembers<T extends object>(value: T, members: Readonly<Record<string, () => unknown>>): object {
  const copy = Object.defineProperties({}, Object.getOwnPropertyDescriptors(value));
  for (const [key, make] of Object.entries(members)) {
    refuse(copy, key);
    asFarAsKnown(() => Object.defineProperty(copy, key, { value: make(), enumerable: true, configurable: true }));
  }
  return copy;
}

/** What the validator made of a value, with every place that it refused closed; null where it refused the whole. */
export function knownOf<T>(output: unknown, issues: readonly v.BaseIssue<unknown>[]): T | null {
  for (const issue of issues) {
    const steps = (issue.path ?? []).map((step) => step.key as string | number);
    // A key that the format has not is not in what the validator made.
    if (issue.type === 'strict_object' && issue.expected === 'never') continue;
    // Which shape is meant is not known, so nothing of the object is.
    if (issue.type === 'variant' && issue.expected !== 'Object') steps.pop();
    if (steps.length === 0) return null;
    close(output, steps);
  }
  return output as T;
}

function close(root: unknown, steps: readonly (string | number)[]): void {
  let at: unknown = root;
  for (const [i, step] of steps.entries()) {
    if (typeof at !== 'object' || at === null) return;
    if (i === steps.length - 1) refuse(at, step);
    const inside = Object.getOwnPropertyDescriptor(at, step);
    // Below a place that is closed nothing can be read anyway.
    if (inside === undefined || inside.get !== undefined) return;
    at = inside.value;
  }
}

function refuse(object: object, key: string | number): void {
  const get = (): never => {
    throw new NotKnown();
  };
  Object.defineProperty(object, key, { get, enumerable: true, configurable: true });
}

/**
 * A first look at a value from outside, before its shape is checked key by key: how large, how deep, how long. What is far too big is refused here at
 * small cost; what passes is small enough for every problem in it to be listed.
 */
import type { Problem } from '../base/result.ts';
import { pointer } from './schemaProblems.ts';

/** Largest sizes in any file of ours, with room: values in all, items of a list, keys of an object, characters of a string. */
const MOST = { values: 8000, items: 200, keys: 100, characters: 4000, depth: 12 } as const;
/** Keys that mean something to the language itself. */
const FORBIDDEN_KEYS = new Set(['__proto__', 'constructor', 'prototype']);

/** Null when the value may be looked at closely. */
export function tooBig(value: unknown, file: string): Problem | null {
  let left: number = MOST.values;
  const walk = (item: unknown, path: readonly (string | number)[]): Problem | null => {
    const problem = (found: string, wanted: string): Problem => ({ file, place: pointer(path), found, wanted });
    if (--left < 0)
      return { file, place: '', found: `more than ${MOST.values} values`, wanted: `at most ${MOST.values}` };
    if (typeof item === 'string' && item.length > MOST.characters) {
      return problem(`${item.length} characters`, `at most ${MOST.characters}`);
    }
    if (typeof item !== 'object' || item === null) return null;
    if (path.length >= MOST.depth) return problem('something nested deeper still', `at most ${MOST.depth} levels`);
    if (Array.isArray(item)) {
      if (item.length > MOST.items) return problem(`a list of ${item.length}`, `at most ${MOST.items}`);
      for (let i = 0; i < item.length; i++) {
        const inside = walk(item[i], [...path, i]);
        if (inside !== null) return inside;
      }
      return null;
    }
    const keys = Object.keys(item);
    if (keys.length > MOST.keys) return problem(`${keys.length} keys`, `at most ${MOST.keys}`);
    for (const key of keys) {
      if (key.length > MOST.characters)
        return problem(`a key of ${key.length} characters`, `at most ${MOST.characters}`);
      if (FORBIDDEN_KEYS.has(key)) return problem(`the key "${key}"`, 'another key');
      const inside = walk((item as Record<string, unknown>)[key], [...path, key]);
      if (inside !== null) return inside;
    }
    return null;
  };
  return walk(value, []);
}

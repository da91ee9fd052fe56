/**
 * A first look at a value from outside, before its shape is checked key by key: how large, how deep, how long. What is far too big is refused here at
 * small cost; what passes is small enough to be looked at key by key.
 */
import type { Phrase } from '../base/phrases.ts';
import type { Problem } from '../base/result.ts';
import { pointer } from './schemaProblems.ts';

export interface Sizes {
  readonly values: number;
  /** of one list */
  readonly items: number;
  /** of one object */
  readonly keys: number;
  /** of one string or key */
  readonly characters: number;
  readonly levels: number;
}

/** Largest sizes that a receiver or a scenario may have, with room. */
const MOST: Sizes = { values: 4000, items: 64, keys: 64, characters: 1000, levels: 12 };
/** Keys that mean something to the language itself. */
const FORBIDDEN_KEYS = new Set(['__proto__', 'constructor', 'prototype']);

/** Null when the value may be looked at closely. */
export function tooBig(value: unknown, file: string, most = MOST): Problem | null {
  let left = most.values;
  const walk = (item: unknown, path: readonly (string | number)[]): Problem | null => {
    const problem = (found: Phrase, wanted: Phrase): Problem => ({ file, place: pointer(path), found, wanted });
    if (--left < 0) return { file, place: '', found: ['moreValues', most.values], wanted: ['atMost', most.values] };
    if (typeof item === 'string' && item.length > most.characters) {
      return problem(['characters', item.length], ['charactersAtMost', most.characters]);
    }
    if (typeof item !== 'object' || item === null) return null;
    if (path.length >= most.levels) return problem(['deeper'], ['levelsAtMost', most.levels]);
    if (Array.isArray(item)) {
      if (item.length > most.items) return problem(['listOf', item.length], ['atMost', most.items]);
      for (let i = 0; i < item.length; i++) {
        const inside = walk(item[i], [...path, i]);
        if (inside !== null) return inside;
      }
      return null;
    }
    const keys = Object.keys(item);
    if (keys.length > most.keys) return problem(['keys', keys.length], ['atMost', most.keys]);
    for (const key of keys) {
      if (key.length > most.characters) return problem(['longKey', key.length], ['charactersAtMost', most.characters]);
      if (FORBIDDEN_KEYS.has(key)) return problem(['key', key], ['anotherKey']);
      const inside = walk((item as Record<string, unknown>)[key], [...path, key]);
      if (inside !== null) return inside;
    }
    return null;
  };
  return walk(value, []);
}

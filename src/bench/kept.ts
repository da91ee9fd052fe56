/**
 * What the bench keeps, by one rule. A state and its parts are never changed once they are made, so an answer holds for as long as what it was made of is the
 * very same: objects by reference, figures and names by value (Object.is). What would be costly to make again, and of which a bench meets a few, is kept by a
 * key that names everything it is made of.
 */

/** The last answer, given again while everything in `of` is the same. */
export function keepLast<A extends readonly unknown[], R>(
  of: (...args: A) => readonly unknown[],
  make: (...args: A) => R,
): (...args: A) => R {
  let kept: { readonly of: readonly unknown[]; readonly answer: R } | null = null;
  return (...args) => {
    const now = of(...args);
    if (kept === null || !now.every((part, i) => Object.is(part, kept!.of[i]))) {
      // Forgotten first: an answer that fails half way may have spoilt arrays of the one before.
      kept = null;
      kept = { of: now, answer: make(...args) };
    }
    return kept.answer;
  };
}

/** Answers by their keys, at most so many; the one that was not asked for longest goes first. */
export function keepByKey<V>(most: number): (key: string, make: () => V) => V {
  const kept = new Map<string, V>();
  return (key, make) => {
    const found = kept.get(key);
    const value = found !== undefined || kept.has(key) ? (found as V) : make();
    // Put back at the end, so that the first in the map is the one longest unused.
    kept.delete(key);
    kept.set(key, value);
    if (kept.size > most) kept.delete(kept.keys().next().value!);
    return value;
  };
}

/** What is worked out once for all runs of a class: answers by their keys, forgotten together where they become many. */
export function once<T>(kept: Map<string, T>, most: number, key: string, make: () => T): T {
  if (kept.has(key)) return kept.get(key)!;
  if (kept.size >= most) kept.clear();
  const made = make();
  kept.set(key, made);
  return made;
}

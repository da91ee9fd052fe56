/** A browser's storage that is there for as long as a test, and whatever waits for changes to rest. */

export function storage() {
  const kept = new Map<string, string>();
  return {
    kept,
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => void kept.set(key, text),
    removeItem: (key: string) => void kept.delete(key),
  };
}

/** Keys in a row, and writes that come when `later` is called. */
export function heldParts() {
  const waiting: (() => void)[] = [];
  let no = 0;
  return {
    newKey: () => `key-${++no}`,
    soon: (write: () => void) => void waiting.push(write),
    later: () => {
      for (const write of waiting.splice(0)) write();
    },
  };
}

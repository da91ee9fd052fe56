/** The page's own timer, for those that are given theirs. */

/** Calls back once so many milliseconds have passed; returns what stops it. */
export function after(milliseconds: number, callback: () => void): () => void {
  const timer = setTimeout(callback, milliseconds);
  return () => clearTimeout(timer);
}

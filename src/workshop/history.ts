/** What was before and after, for undo and redo. Changes that bear the same mark one after the other, such as those of one drag, are one step. */

export interface History<T> {
  readonly past: readonly T[];
  readonly now: T;
  readonly future: readonly T[];
  /** of the last change; null: it stands alone */
  readonly mark: string | null;
}

const MOST_STEPS = 200;

export const begun = <T>(now: T): History<T> => ({ past: [], now, future: [], mark: null });

export function changed<T>(history: History<T>, next: T, mark: string | null = null): History<T> {
  const { past, now } = history;
  if (Object.is(next, now)) return history;
  if (mark !== null && mark === history.mark) return { past, now: next, future: [], mark };
  return { past: [...past, now].slice(-MOST_STEPS), now: next, future: [], mark };
}

export function undone<T>({ past, now, future, mark }: History<T>): History<T> {
  const before = past.at(-1);
  if (before === undefined) return { past, now, future, mark };
  return { past: past.slice(0, -1), now: before, future: [now, ...future], mark: null };
}

export function redone<T>({ past, now, future, mark }: History<T>): History<T> {
  const [after, ...rest] = future;
  if (after === undefined) return { past, now, future, mark };
  return { past: [...past, now], now: after, future: rest, mark: null };
}

/** What is to come next is a step of its own. */
export const paused = <T>(history: History<T>): History<T> => ({ ...history, mark: null });

/**
 * The last state of each run, written at once while the page goes away. A page that is being closed may not live to see its database write through;
 * local storage is written before the call returns. Every run has its own copy. What is found at the next opening is checked like any record, and each
 * copy stays until its state stands in the database.
 */
import type { OpenRun } from './keptRuns.ts';

export interface LeftCopy {
  /** names the copy for `clear` */
  readonly key: string;
  readonly text: string;
}

export interface Lifeboat {
  /** false: there was no room or no storage, and the database must do */
  put(run: OpenRun, savedAtMs: number): boolean;
  /** what was left, unread */
  find(): readonly LeftCopy[];
  keyOf(runId: string): string;
  /** `only`: where the copy is still this one, and no other page has left a later one since */
  clear(key: string, only?: string): void;
}

export type BoatStorage = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

/** `storage` is asked for each time: where it is blocked, the asking itself throws. */
export function createLifeboat(name: string, storage: () => BoatStorage): Lifeboat {
  // The key alone, without a run's name, is how one copy for all runs used to be kept.
  const start = `${name}-lifeboat`;
  const keyOf = (runId: string): string => `${start}-${runId}`;
  return {
    keyOf,
    put(run, savedAtMs) {
      try {
        storage().setItem(keyOf(run.runId), JSON.stringify({ ...run, savedAtMs }));
        return true;
      } catch {
        return false;
      }
    },
    find() {
      try {
        const found = storage();
        const keys = Array.from({ length: found.length }, (_, i) => found.key(i));
        return keys
          .filter((key): key is string => key !== null && (key === start || key.startsWith(`${start}-`)))
          .map((key) => ({ key, text: found.getItem(key) ?? '' }));
      } catch {
        return [];
      }
    },
    clear(key, only) {
      try {
        if (only !== undefined && storage().getItem(key) !== only) return;
        storage().removeItem(key);
      } catch {
        // Blocked storage holds nothing to clear.
      }
    },
  };
}

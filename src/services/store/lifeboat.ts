/**
 * The last state of a run, written at once while the page goes away. A page that is being closed may not live to see its database write through;
 * local storage is written before the call returns. What is found here at the next opening is taken into the logbook and the boat is emptied.
 */
import type { OpenRun } from './keptRuns.ts';

export interface Lifeboat {
  /** false: there was no room or no storage, and the database must do */
  put(run: OpenRun): boolean;
  /** what was left, or null; stays until `clear` */
  find(): unknown;
  clear(): void;
}

type Store = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

/** `storage` is asked for anew each time: where it is blocked, the asking itself throws. */
export function createLifeboat(name: string, storage: () => Store): Lifeboat {
  const key = `${name}-lifeboat`;
  return {
    put(run) {
      try {
        storage().setItem(key, JSON.stringify(run));
        return true;
      } catch {
        return false;
      }
    },
    find() {
      try {
        const text = storage().getItem(key);
        return text === null ? null : (JSON.parse(text) as unknown);
      } catch {
        return null;
      }
    },
    clear() {
      try {
        storage().removeItem(key);
      } catch {
        // Blocked storage holds nothing to clear.
      }
    },
  };
}

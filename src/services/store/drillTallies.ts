/** The last ten looks of each drill, right or wrong, kept in this browser. */

export interface DrillTallies {
  /** the oldest first, ten at most */
  read(drill: string): readonly boolean[];
  add(drill: string, right: boolean): void;
}

const KEY = 'haystack.drills';
const TALLY_LENGTH = 10;

/** `storage` may throw or refuse; then the tallies last as long as the page. */
export function createDrillTallies(storage: () => Pick<Storage, 'getItem' | 'setItem'>): DrillTallies {
  const tallies = readTallies(storage);
  return {
    read: (drill) => tallies.get(drill) ?? [],
    add(drill, right) {
      tallies.set(drill, [...(tallies.get(drill) ?? []), right].slice(-TALLY_LENGTH));
      try {
        storage().setItem(KEY, JSON.stringify(Object.fromEntries([...tallies].map(([id, all]) => [id, written(all)]))));
      } catch {
        // No storage to be had.
      }
    },
  };
}

/** `1101`: the oldest first. */
const written = (all: readonly boolean[]): string => all.map((right) => (right ? '1' : '0')).join('');

/** Whatever is not a tally is as if it were not there. */
function readTallies(storage: () => Pick<Storage, 'getItem'>): Map<string, readonly boolean[]> {
  try {
    const kept: unknown = JSON.parse(storage().getItem(KEY) ?? '{}');
    if (typeof kept !== 'object' || kept === null || Array.isArray(kept)) return new Map();
    return new Map(
      Object.entries(kept).flatMap(([drill, text]) =>
        typeof text === 'string' && /^[01]{1,10}$/.test(text) ? [[drill, [...text].map((sign) => sign === '1')]] : [],
      ),
    );
  } catch {
    return new Map();
  }
}

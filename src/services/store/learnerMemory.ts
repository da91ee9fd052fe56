/** The name or number that runs are handed in under: asked for where a run is signed off, remembered on this machine, and free to stay empty. */
import { LEARNER_CHARS } from '../../files/runFile.ts';

export interface LearnerMemory {
  /** null: none was given */
  read(): string | null;
  /** takes what was typed, without what a run file would refuse */
  write(typed: string): void;
  /** characters that it may have */
  readonly longest: number;
}

const KEY = 'haystack.learner';

/** `storage` may throw or refuse; then the name lasts as long as the page. */
export function createLearnerMemory(storage: () => Pick<Storage, 'getItem' | 'setItem'>): LearnerMemory {
  let name: string | null = null;
  try {
    name = learnerName(storage().getItem(KEY) ?? '');
  } catch {
    // No storage to be had.
  }
  return {
    longest: LEARNER_CHARS,
    read: () => name,
    write(typed) {
      name = learnerName(typed);
      try {
        storage().setItem(KEY, name ?? '');
      } catch {
        // As above.
      }
    },
  };
}

/** What was typed as a run file may hold it; null where nothing is left. */
export function learnerName(typed: string): string | null {
  const visible = typed
    .replace(/[\p{Cc}\p{Cf}\u2028\u2029]/gu, ' ')
    .replace(/\s+/gu, ' ')
    .trim();
  let name = '';
  for (const sign of visible) {
    if (name.length + sign.length > LEARNER_CHARS) break;
    name += sign;
  }
  return name.trim() === '' ? null : name.trim();
}

/** How loud the bench is, remembered on this machine: off until somebody asks for sound. */

export type Loudness = 'off' | 'low' | 'full';

export const LOUDNESSES: readonly Loudness[] = ['off', 'low', 'full'];

export interface SoundMemory {
  read(): Loudness;
  write(loudness: Loudness): void;
}

const KEY = 'haystack.sound';

/** `storage` may throw or refuse; then the choice lasts as long as the page. What is none of the three reads as off. */
export function createSoundMemory(storage: () => Pick<Storage, 'getItem' | 'setItem'>): SoundMemory {
  let loudness: Loudness = 'off';
  try {
    const kept = storage().getItem(KEY);
    loudness = LOUDNESSES.find((one) => one === kept) ?? 'off';
  } catch {
    // No storage to be had.
  }
  return {
    read: () => loudness,
    write(next) {
      loudness = next;
      try {
        storage().setItem(KEY, next);
      } catch {
        // As above.
      }
    },
  };
}

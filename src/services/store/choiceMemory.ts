/** One choice among a few, remembered on this machine: how loud the bench is, whether single letters act. */

export interface ChoiceMemory<T extends string> {
  read(): T;
  write(choice: T): void;
}

/** `choices`: the first stands until another is chosen, and where something else is kept. `storage` may throw or refuse; then the choice lasts as long as the page. */
export function createChoiceMemory<const T extends string>(
  storage: () => Pick<Storage, 'getItem' | 'setItem'>,
  key: string,
  choices: readonly [T, ...T[]],
): ChoiceMemory<T> {
  let chosen: T = choices[0];
  try {
    const kept = storage().getItem(key);
    chosen = choices.find((one) => one === kept) ?? choices[0];
  } catch {
    // No storage to be had.
  }
  return {
    read: () => chosen,
    write(choice) {
      chosen = choice;
      try {
        storage().setItem(key, choice);
      } catch {
        // As above.
      }
    },
  };
}

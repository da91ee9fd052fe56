/** The scenarios and receivers that come with the page: listed from the index made when it was built, read one by one when they are wanted. */
import type { Library } from './library.ts';
import { readEntries } from './readEntries.ts';
import { SHIPPED_INDEX } from './shippedIndex.ts';

export function createShippedLibrary(index: unknown = SHIPPED_INDEX): Library {
  const { entries, leftOut } = readEntries(index);
  // The readers and the list of texts are not for the first page.
  const reading = () => import('./shippedReading.ts');
  return {
    entries: () => entries,
    leftOut: () => leftOut,
    async setup(id, options = {}) {
      const entry = entries.find((one) => one.id === id);
      return entry === undefined ? null : (await reading()).readShippedSetup(id, entry.receiver, options);
    },
    receiver: async (id) => (await reading()).readShippedReceiver(id),
    knownSet: async (id) => (await import('./shippedSet.ts')).shippedSet(id),
    subscribe: () => () => {},
  };
}

/** Receivers of somebody's own, for scenarios that name them: found by their id after those that come with the page. */
import type { OwnReceivers } from '../store/ownReceivers.ts';
import type { Library } from './library.ts';

/** `own` opens the shelf when it is first wanted. */
export function createReceiverShelfLibrary(own: () => Promise<Pick<OwnReceivers, 'read'>>): Library {
  return {
    entries: () => [],
    leftOut: () => [],
    setup: async () => null,
    receiver: async (id, hash) => (await own()).read(id, hash),
    knownSet: async () => null,
    subscribe: () => () => {},
  };
}

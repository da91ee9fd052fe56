/** The library of the page: what comes with it, what the user has opened from files, receivers of the user's own, and the endless track, whose scenarios are made by workers. */

import type { OwnShelf } from '../store/ownShelf.ts';
import { dealBeside } from './dealBeside.ts';
import { createEndlessLibrary } from './endlessLibrary.ts';
import { joinLibraries, type Library } from './library.ts';
import { createOwnLibrary } from './ownLibrary.ts';
import { pageOwnReceivers } from './pageOwnReceivers.ts';
import { createReceiverShelfLibrary } from './receiverShelfLibrary.ts';
import { createShippedLibrary } from './shippedLibrary.ts';

export function pageLibrary(shelf: OwnShelf): Library {
  const shipped = createShippedLibrary();
  const ownReceivers = createReceiverShelfLibrary(pageOwnReceivers);
  const endless = createEndlessLibrary(
    async (id, options) => {
      const { pageJobs } = await import('../jobs/pageJobs.ts');
      return pageJobs().run('endless', { id }, options);
    },
    shipped,
    dealBeside,
  );
  return joinLibraries(shipped, ownReceivers, createOwnLibrary(shelf, joinLibraries(shipped, ownReceivers)), endless);
}

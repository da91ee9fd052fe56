/** The library of the page: what comes with it, and the endless track, whose scenarios are made by workers. */
import { createEndlessLibrary } from './endlessLibrary.ts';
import { joinLibraries, type Library } from './library.ts';
import { createShippedLibrary } from './shippedLibrary.ts';

export function pageLibrary(): Library {
  const shipped = createShippedLibrary();
  const endless = createEndlessLibrary(async (id, options) => {
    const { pageJobs } = await import('../jobs/pageJobs.ts');
    return pageJobs().run('endless', { id }, options);
  }, shipped);
  return joinLibraries(shipped, endless);
}

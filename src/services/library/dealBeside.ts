/** How an attempt at a sealed scenario is dealt where nothing else is said: beside the page, whose first piece has no part in it. */
import type { Deal } from './library.ts';

export const dealBeside: Deal = async (order, options = {}) =>
  (await import('../jobs/pageJobs.ts')).dealBeside(order, options);

/** What dealing ahead needs of the workers. */
import { dealBeside, dealInHurry, pageJobs } from '../jobs/pageJobs.ts';
import type { DealingTools } from './dealsAhead.ts';

export const dealingTools: DealingTools = {
  ahead: (order, { signal, hurry }) =>
    hurry ? dealInHurry(order, { signal }) : pageJobs().run('attempt', order, { signal }),
  beside: dealBeside,
};

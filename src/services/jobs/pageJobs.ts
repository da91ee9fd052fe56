/** The page's own pool: workers of the built page, at most two, for the page itself wants a core too. */
import { createJobs, JobFailed, type JobOptions, type Jobs } from './jobPool.ts';
import type { Order, Outcome } from './jobTable.ts';
import type { PlainJob } from './plainJobs.ts';

const MOST_WORKERS = 2;

let jobs: Jobs | null = null;

export function pageJobs(): Jobs {
  jobs ??= createJobs(() => new Worker(new URL('./jobWorker.ts', import.meta.url), { type: 'module' }), MOST_WORKERS);
  return jobs;
}

/** As a job, or here where the page can have no worker (it then stands still meanwhile, but the work gets done). Only for jobs that need no library. */
export async function beside<N extends PlainJob>(name: N, order: Order<N>, options?: JobOptions): Promise<Outcome<N>> {
  try {
    return await pageJobs().run(name, order, options);
  } catch (error) {
    if (!(error instanceof JobFailed) || error.failure !== 'noWorker') throw error;
    const { PLAIN_JOBS } = await import('./plainJobs.ts');
    const here: (order: Order<N>) => Outcome<N> = PLAIN_JOBS[name];
    return here(order);
  }
}

/** The page's own pool: workers of the built page, at most two, for the page itself wants a core too. */
import { dealInLanes } from './attemptLanes.ts';
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
  return orHere(name, order, pageJobs().run(name, order, options));
}

/** An attempt at a sealed scenario, in two lanes where the machine has the cores for them. */
export function dealBeside(order: Order<'attempt'>, options: JobOptions = {}): Promise<Outcome<'attempt'>> {
  const alone = navigator.hardwareConcurrency < 2;
  return orHere(
    'attempt',
    order,
    alone ? pageJobs().run('attempt', order, options) : dealInLanes(pageJobs(), order, options),
  );
}

async function orHere<N extends PlainJob>(name: N, order: Order<N>, outcome: Promise<Outcome<N>>): Promise<Outcome<N>> {
  try {
    return await outcome;
  } catch (error) {
    if (!(error instanceof JobFailed) || error.failure !== 'noWorker') throw error;
    const { PLAIN_JOBS } = await import('./plainJobs.ts');
    const here: (order: Order<N>) => Outcome<N> = PLAIN_JOBS[name];
    return here(order);
  }
}

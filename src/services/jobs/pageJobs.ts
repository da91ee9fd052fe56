/** What the page has done beside it. */
import { dealInLanes } from './attemptLanes.ts';
import { JobFailed, type JobOptions } from './jobPool.ts';
import type { Order, Outcome } from './jobTable.ts';
import { pageJobs } from './pageWorkers.ts';
import type { PlainJob } from './plainJobs.ts';

export { pageJobs };

/** As a job, or here where the page can have no worker (it then stands still meanwhile, but the work gets done). Only for jobs that need no library. */
export async function beside<N extends PlainJob>(name: N, order: Order<N>, options?: JobOptions): Promise<Outcome<N>> {
  return orHere(name, order, pageJobs().run(name, order, options));
}

/** A lane begins with code that its worker has yet to compile, which takes longer than the dealing, and the page draws its bench meanwhile: on fewer cores two lanes take longer than one. */
const CORES_FOR_LANES = 3;

/** An attempt at a sealed scenario, in two lanes where the machine has the cores for them. */
export function dealInHurry(order: Order<'attempt'>, options: JobOptions = {}): Promise<Outcome<'attempt'>> {
  const alone = navigator.hardwareConcurrency < CORES_FOR_LANES;
  return alone ? pageJobs().run('attempt', order, options) : dealInLanes(pageJobs(), order, options);
}

/** The same in any case, be it here. */
export function dealBeside(order: Order<'attempt'>, options: JobOptions = {}): Promise<Outcome<'attempt'>> {
  return orHere('attempt', order, dealInHurry(order, options));
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

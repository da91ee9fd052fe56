/** The page's own pool: workers of the built page, at most two, for the page itself wants a core too. It comes in a piece by itself: a worker can start while the page fetches what it will be asked. */
import { createJobs, type Jobs } from './jobPool.ts';

const MOST_WORKERS = 2;

let jobs: Jobs | null = null;

export function pageJobs(): Jobs {
  jobs ??= createJobs(() => new Worker(new URL('./jobWorker.ts', import.meta.url), { type: 'module' }), MOST_WORKERS);
  return jobs;
}

/** The longest task of a page's main thread, by the processor's own count: what else the machine does meanwhile is not the page's. */
import type { Browser } from 'playwright';

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** microseconds of the thread's own processor time */
  readonly tdur?: number;
  readonly args?: unknown;
}

export const traceTasks = (browser: Browser): Promise<void> =>
  browser.startTracing(undefined, { categories: ['-*', 'blink.user_timing', 'disabled-by-default-devtools.timeline'] });

/** Ends what `traceTasks` began. The browser has pages of its own: only threads on which `url` was opened count. */
export async function longestTaskMs(browser: Browser, url: string): Promise<number> {
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as {
    readonly traceEvents: readonly TraceEvent[];
  };
  const threadOf = ({ pid, tid }: TraceEvent): string => `${pid} ${tid}`;
  const ours = new Set(
    traceEvents
      .filter(({ name, args }) => name === 'navigationStart' && JSON.stringify(args).includes(url))
      .map(threadOf),
  );
  const tasks = traceEvents.filter(
    (event) => event.name === 'RunTask' && event.ph === 'X' && ours.has(threadOf(event)),
  );
  if (tasks.length === 0) throw new Error(`no task of ${url} in the trace`);
  return tasks.reduce((most, { tdur = 0 }) => Math.max(most, tdur), 0) / 1000;
}

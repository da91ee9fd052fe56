/** The longest task of a page's main thread, and what it works for each frame, by the processor's own count: what else the machine does meanwhile is not the page's. */
import type { Browser } from 'playwright';

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** microseconds */
  readonly ts: number;
  /** microseconds of the thread's own processor time */
  readonly tdur?: number;
  readonly args?: unknown;
}

export const traceTasks = (browser: Browser): Promise<void> =>
  browser.startTracing(undefined, { categories: ['-*', 'blink.user_timing', 'disabled-by-default-devtools.timeline'] });

const threadOf = ({ pid, tid }: TraceEvent): string => `${pid} ${tid}`;
const isTask = ({ name, ph }: TraceEvent): boolean => name === 'RunTask' && ph === 'X';

async function traced(browser: Browser): Promise<readonly TraceEvent[]> {
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as {
    readonly traceEvents: readonly TraceEvent[];
  };
  return traceEvents;
}

/** Ends what `traceTasks` began. The browser has pages of its own: only threads on which `url` was opened count. */
export async function longestTaskMs(browser: Browser, url: string): Promise<number> {
  const events = await traced(browser);
  const ours = new Set(
    events.filter(({ name, args }) => name === 'navigationStart' && JSON.stringify(args).includes(url)).map(threadOf),
  );
  const tasks = events.filter((event) => isTask(event) && ours.has(threadOf(event)));
  if (tasks.length === 0) throw new Error(`no task of ${url} in the trace`);
  return longestOf(tasks);
}

/** Ends what `traceTasks` began, of the one thread that worked most of all: the longest of its tasks in ms. */
export async function longestOfBusiestMs(browser: Browser): Promise<number> {
  return longestOf(busiest(await traced(browser)).tasks);
}

const longestOf = (tasks: readonly TraceEvent[]): number =>
  tasks.reduce((most, { tdur = 0 }) => Math.max(most, tdur), 0) / 1000;

/** Ends what `traceTasks` began: what the page's thread worked from each of its frames to the next, in ms, in order of length. */
export async function frameWorks(browser: Browser): Promise<readonly number[]> {
  const { tasks, events } = busiest(await traced(browser));
  const begins = events.filter(({ name }) => name === 'BeginMainThreadFrame').map(({ ts }) => ts);
  begins.sort((a, b) => a - b);
  if (begins.length < 2) throw new Error('no frames in the trace');
  const works = begins.slice(1).map(() => 0);
  const inOrder = [...tasks].sort((a, b) => a.ts - b.ts);
  let at = 0;
  for (const { ts, tdur = 0 } of inOrder) {
    while (at < works.length && ts >= begins[at + 1]!) at++;
    // A task holds the sign of the frame that it draws.
    if (at < works.length) works[at]! += tdur / 1000;
  }
  return works.sort((a, b) => a - b);
}

/** Pages have a main thread each, and only those draw frames. */
function busiest(events: readonly TraceEvent[]) {
  const works = new Map<string, number>();
  const drawing = new Set(events.filter(({ name }) => name === 'BeginMainThreadFrame').map(threadOf));
  for (const event of events) {
    if (!isTask(event) || !drawing.has(threadOf(event))) continue;
    works.set(threadOf(event), (works.get(threadOf(event)) ?? 0) + (event.tdur ?? 0));
  }
  const [most] = [...works].sort((a, b) => b[1] - a[1])[0] ?? [];
  if (most === undefined) throw new Error('no page in the trace');
  const mine = events.filter((event) => threadOf(event) === most);
  return { events: mine, tasks: mine.filter(isTask) };
}

/** The longest task of a page's main thread, and what it works for each frame, by the processor's own count: what else the machine does meanwhile is not the page's. */
import type { Browser } from 'playwright';

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** microseconds */
  readonly ts: number;
  /** microseconds by the clock */
  readonly dur?: number;
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

/** For `frameWorks`: the tasks, and in which of them a frame was drawn. */
export const traceFrames = (browser: Browser): Promise<void> =>
  browser.startTracing(undefined, { categories: ['-*', 'blink', 'disabled-by-default-devtools.timeline'] });

const DRAWS = 'WebFrameWidgetImpl::UpdateLifecycle';

/** Ends what `traceFrames` began: what the page's thread worked from each of its frames to the next, in ms, in order of length. */
export async function frameWorks(browser: Browser): Promise<readonly number[]> {
  const { tasks, events } = busiest(await traced(browser));
  const draws = events.filter(({ name }) => name === DRAWS).map(({ ts }) => ts);
  const inOrder = [...tasks].sort((a, b) => a.ts - b.ts);
  const works: number[] = [];
  let work = 0;
  for (const { ts, dur = 0, tdur = 0 } of inOrder) {
    work += tdur / 1000;
    if (!draws.some((at) => at >= ts && at <= ts + dur)) continue;
    works.push(work);
    work = 0;
  }
  if (works.length === 0) throw new Error('no frames in the trace');
  return works.sort((a, b) => a - b);
}

/** Of the pages' main threads the one that worked most. */
function busiest(events: readonly TraceEvent[]) {
  const mains = new Set(
    events
      .filter(({ name, args }) => name === 'thread_name' && JSON.stringify(args).includes('CrRendererMain'))
      .map(threadOf),
  );
  const works = new Map<string, number>();
  for (const event of events)
    if (isTask(event) && mains.has(threadOf(event)))
      works.set(threadOf(event), (works.get(threadOf(event)) ?? 0) + (event.tdur ?? 0));
  const [most] = [...works].sort((a, b) => b[1] - a[1])[0] ?? [];
  if (most === undefined) throw new Error('no page in the trace');
  const mine = events.filter((event) => threadOf(event) === most);
  return { events: mine, tasks: mine.filter(isTask) };
}

/** An attempt dealt in two lanes is the attempt that is dealt in order, whichever lane is the quicker. */
import { describe, expect, it } from 'vitest';
import { firstIdea } from '../../src/certify/attempt.ts';
import { IDEAS_OF_ATTEMPT } from '../../src/certify/dealt.ts';
import { dealInLanes } from '../../src/services/jobs/attemptLanes.ts';
import { JobFailed, type Jobs } from '../../src/services/jobs/jobPool.ts';
import type { Order, Outcome } from '../../src/services/jobs/jobTable.ts';
import { shippedLibrary } from '../files/shipped.ts';

const { receivers, scenarios } = shippedLibrary();
const scenario = scenarios.find(({ id }) => id === 'trust-nothing')!;
const order: Order<'attempt'> = { design: receivers.get(scenario.receiver)!, scenario, attempt: 5004 };

interface Lane {
  readonly order: Order<'ideas'>;
  readonly gone: boolean;
  /** tells that it has begun on an idea */
  readonly at: (idea: number) => void;
  readonly end: (found: Outcome<'ideas'>) => void;
  readonly fail: (error: Error) => void;
}

/** Jobs whose lanes go on when they are told to. */
function slowJobs(free: number) {
  const lanes: Lane[] = [];
  const run = (_name: string, of: Order<'ideas'>, options: { signal: AbortSignal; onShare: (share: number) => void }) =>
    new Promise((resolve, reject) => {
      const lane = {
        order: of,
        gone: false,
        at: (idea: number) => options.onShare(idea / IDEAS_OF_ATTEMPT),
        end: resolve,
        fail: reject,
      };
      options.signal.addEventListener('abort', () => {
        lane.gone = true;
        reject(new JobFailed('calledOff'));
      });
      lanes.push(lane as Lane);
    });
  return { lanes, jobs: { run, free: () => free, close() {} } as unknown as Jobs };
}

const named = (idea: number): Outcome<'ideas'> => ({ idea, setup: { idea } as never });
const ideaOf = (outcome: Outcome<'attempt'>): unknown =>
  outcome.ok ? (outcome.value as unknown as { idea: number }).idea : outcome;
/** Whether it has an outcome by now. */
const settled = (outcome: Promise<unknown>): Promise<boolean> =>
  Promise.race([outcome.then(() => true), new Promise<boolean>((go) => setTimeout(() => go(false), 0))]);

describe('two lanes', () => {
  it('try every other idea each', () => {
    const { lanes, jobs } = slowJobs(2);
    void dealInLanes(jobs, order);
    expect(lanes.map(({ order: { first, step } }) => [first, step])).toEqual([
      [0, 2],
      [1, 2],
    ]);
  });

  it('take what the first idea gives without waiting for the second, which is ended', async () => {
    const { lanes, jobs } = slowJobs(2);
    const outcome = dealInLanes(jobs, order);
    lanes[0]!.end(named(0));
    expect(ideaOf(await outcome)).toBe(0);
    expect(lanes[1]!.gone).toBe(true);
  });

  it('wait for a lower idea that is still open, and take it', async () => {
    const { lanes, jobs } = slowJobs(2);
    const outcome = dealInLanes(jobs, order);
    lanes[1]!.end(named(3));
    lanes[0]!.at(2);
    expect(await settled(outcome)).toBe(false);
    lanes[0]!.end(named(2));
    expect(ideaOf(await outcome)).toBe(2);
  });

  it('take the higher one once the other lane has gone past it', async () => {
    const { lanes, jobs } = slowJobs(2);
    const outcome = dealInLanes(jobs, order);
    lanes[1]!.end(named(1));
    expect(await settled(outcome)).toBe(false);
    lanes[0]!.at(2);
    expect(ideaOf(await outcome)).toBe(1);
    expect(lanes[0]!.gone).toBe(true);
  });

  it('say so where neither finds anything, as in order', async () => {
    const { lanes, jobs } = slowJobs(2);
    const outcome = dealInLanes(jobs, order);
    for (const lane of lanes) lane.end(null);
    const failed = await outcome;
    expect(failed.ok).toBe(false);
    expect(failed.ok || failed.problems[0]?.found).toEqual(['attemptFails', 5004, IDEAS_OF_ATTEMPT]);
  });

  it('end with the page\u2019s call, and with what goes wrong', async () => {
    const called = slowJobs(2);
    const away = new AbortController();
    const outcome = dealInLanes(called.jobs, order, { signal: away.signal });
    away.abort();
    await expect(outcome).rejects.toMatchObject({ failure: 'calledOff' });
    expect(called.lanes.every(({ gone }) => gone)).toBe(true);
    const broken = slowJobs(2);
    const none = dealInLanes(broken.jobs, order);
    broken.lanes[1]!.fail(new JobFailed('noWorker'));
    await expect(none).rejects.toMatchObject({ failure: 'noWorker' });
    expect(broken.lanes[0]!.gone).toBe(true);
  });
});

it('one worker alone tries them all in order', () => {
  const { lanes, jobs } = slowJobs(1);
  void dealInLanes(jobs, order);
  expect(lanes.map(({ order: { first, step } }) => [first, step])).toEqual([[0, 1]]);
});

it('deal the very sets that are dealt in order, also where the first ideas come to nothing', async () => {
  // Which lane ends first does not matter: here the odd one does, then the even one.
  const jobs = {
    run: async (_name: string, { design, scenario: of, attempt, first, step }: Order<'ideas'>) => {
      if (first === 0) await new Promise((go) => setTimeout(go, 1));
      return firstIdea(design, of, attempt, { first, step });
    },
    free: () => 2,
    close() {},
  } as unknown as Jobs;
  for (const [attempt, idea] of [
    [5004, 2],
    [5007, 1],
  ] as const) {
    const inOrder = firstIdea(order.design, scenario, attempt);
    expect(inOrder?.idea).toBe(idea);
    expect(await dealInLanes(jobs, { ...order, attempt })).toEqual({ ok: true, value: inOrder?.setup });
  }
});

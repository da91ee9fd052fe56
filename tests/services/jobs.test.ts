/** Jobs beside the page, over real message ports: outcomes, progress, calling off, what breaks, and that at most so many run at a time. */
import { expose } from 'comlink';
import { afterEach, describe, expect, it } from 'vitest';
import { certifiedSet } from '../../scripts/makeCourseIndex.ts';
import { certifyScenario } from '../../src/certify/certifyScenario.ts';
import { endlessScenario } from '../../src/certify/endless.ts';
import { blindTurns } from '../../src/grading/blindTurns.ts';
import { claimOf, grade } from '../../src/grading/grade.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { doJob, type JobWorld } from '../../src/services/jobs/doJob.ts';
import { createJobs, JobFailed, type Jobs, type WorkerLike } from '../../src/services/jobs/jobPool.ts';
import type { Workbench } from '../../src/services/jobs/jobTable.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { setupOf } from '../technician/oneScenario.ts';

const library = shippedLibrary();
const world: JobWorld = {
  library: async () => library,
  knownSet: async (id) => certifiedSet(id),
  par: async () => null,
};

interface Made {
  readonly workers: readonly (WorkerLike & { readonly gone: boolean; fail(message: string): void })[];
  readonly jobs: Jobs;
}

const open: Made[] = [];
afterEach(() => {
  for (const { jobs } of open.splice(0)) jobs.close();
});

/** A pool whose workers are message ports inside this process. */
function pool(bench: Workbench, most = 2): Made {
  const workers: (WorkerLike & { gone: boolean; fail(message: string): void })[] = [];
  const jobs = createJobs(() => {
    const { port1, port2 } = new MessageChannel();
    expose(bench, port2 as never);
    port2.start();
    port1.start();
    const errors = new EventTarget();
    const worker = {
      gone: false,
      postMessage: (message: unknown, transfer: Transferable[]) => port1.postMessage(message, transfer as never),
      addEventListener: (type: string, listener: never) =>
        type === 'error' ? errors.addEventListener(type, listener) : port1.addEventListener(type, listener),
      removeEventListener: (type: string, listener: never) =>
        type === 'error' ? errors.removeEventListener(type, listener) : port1.removeEventListener(type, listener),
      terminate() {
        worker.gone = true;
        port1.close();
      },
      fail: (message: string) => errors.dispatchEvent(Object.assign(new Event('error'), { message })),
    };
    workers.push(worker);
    return worker as never;
  }, most);
  const made = { workers, jobs };
  open.push(made);
  return made;
}

interface Begun {
  readonly id: string;
  /** resolves when the page's side has heard it */
  readonly onShare: (share: number) => Promise<void>;
  readonly end: (outcome: unknown) => void;
}

/** A bench whose jobs end when they are told to. `until` resolves once so many have begun. */
function slowBench() {
  const begun: Begun[] = [];
  const waiting: { readonly count: number; readonly go: () => void }[] = [];
  const bench = {
    run: (_name: string, { id }: { id: string }, onShare: Begun['onShare']) =>
      new Promise((resolve) => {
        begun.push({ id, onShare, end: resolve });
        for (const { count, go } of waiting) if (begun.length >= count) go();
      }),
  } as unknown as Workbench;
  const until = (count: number): Promise<void> =>
    begun.length >= count ? Promise.resolve() : new Promise((go) => void waiting.push({ count, go }));
  return { begun, bench, until };
}

const order = { id: 'endless-1-gale' };

describe('the jobs', () => {
  const { jobs } = (() => {
    const made = pool({ run: (name, what, onShare) => doJob(name, what, world, onShare) });
    open.splice(open.indexOf(made), 1);
    return made;
  })();

  it('make an endless scenario as the command line does, and tell how far they are', async () => {
    const shares: number[] = [];
    let heard = (): void => {};
    const told = new Promise<void>((resolve) => {
      heard = resolve;
    });
    const onShare = (share: number): void => {
      shares.push(share);
      heard();
    };
    const made = await jobs.run('endless', order, { onShare });
    expect(made).toEqual(endlessScenario(library.receivers, order.id));
    await told;
    expect(shares.at(-1)).toBeLessThanOrEqual(1);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
  });

  it('certify as the command line does', async () => {
    const setup = setupOf('off-centre');
    expect(await jobs.run('certify', { scenario: setup.scenario })).toEqual(certifyScenario(setup));
  });

  it('certify a scenario on a receiver of somebody’s own', async () => {
    const setup = setupOf('off-centre');
    const { receiver, deck } = setup;
    const scenario = { ...setup.scenario, receiver: 'pier-set' };
    const world = {
      library: async () => ({ receivers: new Map(), scenarios: [] }),
      knownSet: async () => null,
      par: async () => null,
      ownReceiver: async (id: string) => (id === 'pier-set' ? { receiver: { ...receiver, id }, deck } : null),
    };
    const outcome = await doJob('certify', { scenario }, world, () => {});
    expect(outcome.ok).toBe(true);
    await expect(doJob('certify', { scenario: { ...scenario, receiver: 'no-set' } }, world, () => {})).rejects.toThrow(
      'no receiver no-set',
    );
  });

  it('grade and judge a run as the command line does', async () => {
    const setup = setupOf('first-curve');
    const run = demonstrate(setup);
    const report = grade(setup, run.events);
    expect(await jobs.run('grade', { setup, events: run.events })).toEqual(report);
    expect(await jobs.run('report', { setup, events: run.events })).toEqual({
      report,
      blind: blindTurns(setup, run.events),
    });
    const text = serialiseRunFile(toRunFile(run, claimOf(report)));
    expect(await jobs.run('judge', { text, file: 'run.json' })).toMatchObject({
      outcome: 'verified',
      finding: { kind: 'verified' },
      score: { total: report.total, passed: report.passed },
      marks: { turns: report.turns, seconds: report.seconds },
      scenarioKnown: true,
    });
    expect((await jobs.run('judge', { text: text.slice(0, 900), file: 'half.json' })).finding.kind).toBe('unreadable');
    jobs.close();
  });
});

describe('the pool', () => {
  it('runs no more at a time than it may, in the order asked, and uses its workers again', async () => {
    const { begun, bench, until } = slowBench();
    const { jobs, workers } = pool(bench, 2);
    const ends: string[] = [];
    const all = ['a', 'b', 'c'].map((id) => jobs.run('endless', { id }).then(() => ends.push(id)));
    await until(2);
    // What the two were asked has come to them; there is no third that another could have been asked of.
    expect([begun.map(({ id }) => id), workers.length]).toEqual([['a', 'b'], 2]);
    begun[0]!.end(null);
    await until(3);
    expect([begun[2]!.id, workers.length, ends]).toEqual(['c', 2, ['a']]);
    begun[1]!.end(null);
    begun[2]!.end(null);
    await Promise.all(all);
    expect(workers.some((worker) => worker.gone)).toBe(false);
  });

  it('calls off a job that waits, and one that has begun with its worker', async () => {
    const { begun, bench, until } = slowBench();
    const { jobs, workers } = pool(bench, 1);
    const [first, second, third] = [new AbortController(), new AbortController(), new AbortController()];
    const a = jobs.run('endless', order, { signal: first.signal });
    const b = jobs.run('endless', order, { signal: second.signal });
    const c = jobs.run('endless', { id: 'c' }, { signal: third.signal });
    await until(1);
    second.abort();
    await expect(b).rejects.toMatchObject({ failure: 'calledOff' });
    expect(workers[0]!.gone).toBe(false);
    first.abort();
    await expect(a).rejects.toBeInstanceOf(JobFailed);
    expect(workers[0]!.gone).toBe(true);
    await until(2);
    expect(begun.map(({ id }) => id)).toEqual([order.id, 'c']);
    begun[1]!.end(null);
    expect(await c).toBeNull();
    expect(workers).toHaveLength(2);
    const late = new AbortController();
    late.abort();
    await expect(jobs.run('endless', order, { signal: late.signal })).rejects.toMatchObject({ failure: 'calledOff' });
  });

  it('says what a job threw and goes on with the same worker', async () => {
    let bad = true;
    const bench = {
      run: async () => {
        if (bad) throw new Error('no receiver nobody');
        return null;
      },
    } as unknown as Workbench;
    const { jobs, workers } = pool(bench, 1);
    await expect(jobs.run('endless', order)).rejects.toMatchObject({
      failure: 'threw',
      message: 'threw: no receiver nobody',
    });
    bad = false;
    expect(await jobs.run('endless', order)).toBeNull();
    expect(workers).toHaveLength(1);
  });

  it('fails the job of a worker that breaks down, and the jobs of a page that can have none', async () => {
    const { bench, until } = slowBench();
    const { jobs, workers } = pool(bench, 1);
    const job = jobs.run('endless', order);
    await until(1);
    workers[0]!.fail('script not found');
    await expect(job).rejects.toMatchObject({ failure: 'noWorker', message: 'noWorker: script not found' });
    expect(workers[0]!.gone).toBe(true);
    const none = createJobs(() => {
      throw new Error('blocked');
    }, 1);
    await expect(none.run('endless', order)).rejects.toMatchObject({
      failure: 'noWorker',
      message: 'noWorker: blocked',
    });
  });

  it('has workers stand by, gives them jobs by turns, and none to one that broke down meanwhile', async () => {
    const { begun, bench, until } = slowBench();
    const { jobs, workers } = pool(bench, 2);
    jobs.wake();
    jobs.wake();
    expect([workers.length, jobs.free(), begun.length]).toEqual([2, 2, 0]);
    const done = async (count: number): Promise<void> => {
      const job = jobs.run('endless', order);
      await until(count);
      begun[count - 1]!.end(null);
      await job;
    };
    await done(1);
    // Whoever has just worked rests: calling off the next job costs the other one.
    const calledOff = new AbortController();
    const second = jobs.run('endless', order, { signal: calledOff.signal });
    await until(2);
    calledOff.abort();
    await expect(second).rejects.toMatchObject({ failure: 'calledOff' });
    expect(workers.map(({ gone }) => gone)).toEqual([false, true]);
    workers[0]!.fail('out of memory');
    expect(workers[0]!.gone).toBe(true);
    await done(3);
    expect(workers).toHaveLength(3);
    const none = createJobs(() => {
      throw new Error('blocked');
    }, 1);
    expect(() => none.wake()).not.toThrow();
  });

  it('hears no share that falls, and none after the end', async () => {
    const { begun, bench, until } = slowBench();
    const { jobs } = pool(bench, 1);
    const shares: number[] = [];
    const job = jobs.run('endless', order, { onShare: (share) => shares.push(share) });
    await until(1);
    for (const share of [0.2, 0.1, 0.5, 7]) await begun[0]!.onShare(share);
    begun[0]!.end(null);
    await job;
    await begun[0]!.onShare(1);
    expect(shares).toEqual([0.2, 0.5, 1]);
  });

  it('takes nothing more once it is closed', async () => {
    const { bench, until } = slowBench();
    const { jobs, workers } = pool(bench, 1);
    const running = jobs.run('endless', order);
    const waiting = jobs.run('endless', order);
    await until(1);
    jobs.close();
    await expect(running).rejects.toMatchObject({ failure: 'calledOff' });
    await expect(waiting).rejects.toMatchObject({ failure: 'calledOff' });
    await expect(jobs.run('endless', order)).rejects.toMatchObject({ failure: 'calledOff' });
    expect(workers.every((worker) => worker.gone)).toBe(true);
  });
});

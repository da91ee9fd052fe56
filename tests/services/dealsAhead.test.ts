/** Attempts dealt ahead: each handed out once, an old one never, and what is dealt while nobody does anything in nobody's way. */
import { describe, expect, it } from 'vitest';
import { bad, good } from '../../src/base/result.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { JobFailed } from '../../src/services/jobs/jobPool.ts';
import type { Order, Outcome } from '../../src/services/jobs/jobTable.ts';
import {
  createDealsAhead,
  type DealsAhead,
  FIRST_MS,
  NEAR_MS,
  QUIET_MS,
  REST_MS,
} from '../../src/services/library/dealsAhead.ts';
import type { FetchOptions } from '../../src/services/library/library.ts';

interface Job {
  readonly order: Order<'attempt'>;
  readonly hurry: boolean;
  readonly signal: AbortSignal;
  end(outcome?: Outcome<'attempt'>): void;
  fail(error: Error): void;
}

/** A library of sealed jobs, whose scenarios are their ids with a version; `practice` is none. */
class World {
  readonly jobs: Job[] = [];
  readonly beside: number[] = [];
  readonly taken = new Set<string>();
  version = 1;
  woken = 0;
  rooms = 0;
  visible = true;
  private number = 0;
  private nowMs = 0;
  private timers: { readonly atMs: number; readonly callback: () => void }[] = [];
  readonly ahead: DealsAhead;

  constructor(workers = true) {
    this.ahead = createDealsAhead({
      setup: this.setup,
      tools: workers ? async () => ({ ahead: this.deal, beside: this.dealBeside }) : null,
      wake: () => this.woken++,
      isSame: async (one, other) => JSON.stringify(one) === JSON.stringify(other),
      freshNumber: () => ++this.number,
      isSealed: (id) => id !== 'practice',
      isFree: async (id) => !this.taken.has(id),
      fetchRoom: () => this.rooms++,
      isVisible: () => this.visible,
      after: (milliseconds, callback) => {
        const timer = { atMs: this.nowMs + milliseconds, callback };
        this.timers.push(timer);
        return () => {
          this.timers = this.timers.filter((one) => one !== timer);
        };
      },
    });
  }

  readonly setup = async (id: string, { attempt, deal, signal }: FetchOptions = {}) => {
    const order = { design: {}, scenario: { id, version: this.version }, attempt } as unknown as Order<'attempt'>;
    return (deal ?? this.dealBeside)(order, signal === undefined ? {} : { signal });
  };

  private readonly deal = (order: Order<'attempt'>, { signal, hurry }: { signal: AbortSignal; hurry: boolean }) =>
    new Promise<Outcome<'attempt'>>((resolve, reject) => {
      signal.addEventListener('abort', () => reject(new JobFailed('calledOff')));
      this.jobs.push({ order, hurry, signal, end: (outcome = dealt(order)) => resolve(outcome), fail: reject });
    });

  private readonly dealBeside = async (order: Order<'attempt'>) => {
    this.beside.push(order.attempt);
    return dealt(order);
  };

  /** what has been begun, with the numbers */
  get begun(): readonly string[] {
    return this.jobs.map(({ order }) => `${order.scenario.id} ${order.attempt}`);
  }

  async pass(milliseconds: number): Promise<void> {
    const untilMs = this.nowMs + milliseconds;
    for (;;) {
      await settled();
      const [due] = this.timers.filter(({ atMs }) => atMs <= untilMs).sort((a, b) => a.atMs - b.atMs);
      if (due === undefined) break;
      this.nowMs = due.atMs;
      this.timers = this.timers.filter((one) => one !== due);
      due.callback();
    }
    this.nowMs = untilMs;
  }

  /** the first job that is reached for, dealt to its end */
  async makeReady(id: string): Promise<void> {
    this.ahead.approach(id).reach();
    await settled();
    this.jobs[0]!.end();
    await settled();
  }

  /** opens a job, as the bench does */
  async open(id: string): Promise<unknown> {
    const { signal } = new AbortController();
    const outcome = await this.setup(id, { ...this.ahead.take(id, signal), signal });
    return outcome.ok ? outcome.value : outcome;
  }
}

const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
const dealt = ({ scenario, attempt }: Order<'attempt'>): Outcome<'attempt'> =>
  good({ ...(scenario as object), attempt } as unknown as BenchSetup);
const one = (id: string, attempt: number, version = 1) => ({ id, version, attempt });

/** A page that stands until it has begun to deal. */
async function standing(world: World, ...ids: readonly string[]): Promise<() => void> {
  const stop = world.ahead.standBy(() => ids);
  world.ahead.stirred();
  await world.pass(FIRST_MS + QUIET_MS);
  return stop;
}

describe('what a hand has reached for', () => {
  it('is dealt at once, with all the workers, and handed out once', async () => {
    const world = new World();
    world.ahead.approach('radio').reach();
    await settled();
    expect(world.begun).toEqual(['radio 1']);
    expect(world.jobs[0]!.hurry).toBe(true);
    world.jobs[0]!.end();
    await settled();
    expect(await world.open('radio')).toEqual(one('radio', 1));
    expect(await world.open('radio')).toEqual(one('radio', 2));
    expect(world.beside).toEqual([2]);
  });

  it('is waited for by an opening that comes before its end', async () => {
    const world = new World();
    world.ahead.approach('radio').reach();
    const opened = world.open('radio');
    await settled();
    world.jobs[0]!.end();
    expect(await opened).toEqual(one('radio', 1));
    expect([world.begun, world.beside]).toEqual([['radio 1'], []]);
  });

  it('is not dealt again while it lies ready', async () => {
    const world = new World();
    await world.makeReady('radio');
    world.ahead.approach('radio').reach();
    await settled();
    expect(world.begun).toEqual(['radio 1']);
  });

  it('gives an old deal to nobody whose scenario has changed since', async () => {
    const world = new World();
    await world.makeReady('own');
    world.version = 2;
    expect(await world.open('own')).toEqual(one('own', 1, 2));
    expect(world.beside).toEqual([1]);
  });

  it('is dealt as ever where dealing ahead fails, or comes to nothing', async () => {
    const world = new World();
    world.ahead.approach('radio').reach();
    const opened = world.open('radio');
    await settled();
    world.jobs[0]!.fail(new JobFailed('threw'));
    expect(await opened).toEqual(one('radio', 1));
    world.ahead.approach('radio').reach();
    await settled();
    world.jobs[1]!.end(bad({ file: 'radio', place: '', found: ['nothing'], wanted: ['certifiable'] }));
    await settled();
    expect(await world.open('radio')).toEqual(one('radio', 3));
    expect(world.beside).toEqual([1, 3]);
  });

  it('is left to the opening where a run of it lies open, or an exam has it', async () => {
    const world = new World();
    world.taken.add('radio');
    world.ahead.approach('radio').reach();
    await settled();
    expect(world.begun).toEqual([]);
    expect(await world.open('radio')).toEqual(one('radio', 2));
  });

  it('brings a practice job its room and nothing else', async () => {
    const world = new World();
    world.ahead.approach('practice').reach();
    await settled();
    expect([world.rooms, world.woken, world.begun]).toEqual([1, 0, []]);
  });

  it('has its workers stand by before the scenario is read', () => {
    const world = new World();
    world.ahead.approach('radio').reach();
    expect(world.woken).toBe(1);
  });

  it('is called off with the opening that it was handed to', async () => {
    const world = new World();
    world.ahead.approach('radio').reach();
    await settled();
    const calledOff = new AbortController();
    world.ahead.take('radio', calledOff.signal);
    calledOff.abort();
    expect(world.jobs[0]!.signal.aborted).toBe(true);
  });

  it('does without on a page that has no workers, and once they have broken down', async () => {
    const none = new World(false);
    none.ahead.approach('radio').reach();
    await settled();
    expect(none.begun).toEqual([]);
    expect(await none.open('radio')).toEqual(one('radio', 1));
    const broken = new World();
    broken.ahead.approach('radio').reach();
    await settled();
    broken.jobs[0]!.fail(new JobFailed('noWorker'));
    await settled();
    broken.ahead.approach('tuner').reach();
    await settled();
    expect(broken.begun).toEqual(['radio 1']);
    expect(await broken.open('radio')).toEqual(one('radio', 2));
  });
});

describe('a pointer', () => {
  it('that rests on a card has it dealt, and one that only crosses it does not', async () => {
    const world = new World();
    const [radio, tuner] = [world.ahead.approach('radio'), world.ahead.approach('tuner')];
    radio.near(true);
    await world.pass(NEAR_MS / 2);
    radio.near(false);
    tuner.near(true);
    await world.pass(NEAR_MS);
    expect(world.begun).toEqual(['tuner 1']);
  });

  it('ends nothing that another card has begun; pressing does', async () => {
    const world = new World();
    world.ahead.approach('radio').near(true);
    await world.pass(NEAR_MS);
    world.ahead.approach('tuner').near(true);
    await world.pass(NEAR_MS);
    expect([world.begun, world.jobs[0]!.signal.aborted]).toEqual([['radio 1'], false]);
    world.jobs[0]!.end();
    await world.pass(0);
    expect(world.begun).toEqual(['radio 1', 'tuner 2']);
    world.ahead.approach('heron').reach();
    await settled();
    expect(world.jobs[1]!.signal.aborted).toBe(true);
    expect(world.begun).toEqual(['radio 1', 'tuner 2', 'heron 3']);
  });
});

describe('while nobody does anything', () => {
  it('deals one after the other, by one worker, each once', async () => {
    const world = new World();
    await standing(world, 'radio', 'tuner');
    expect(world.begun).toEqual(['radio 1']);
    expect(world.jobs[0]!.hurry).toBe(false);
    await world.pass(60_000);
    expect(world.begun).toHaveLength(1);
    world.jobs[0]!.end();
    await world.pass(REST_MS);
    expect(world.begun).toEqual(['radio 1', 'tuner 2']);
    world.jobs[1]!.fail(new JobFailed('threw'));
    await world.pass(60_000);
    expect(world.begun).toHaveLength(2);
    expect(await world.open('radio')).toEqual(one('radio', 1));
  });

  it('does not begin before somebody has been seen, nor in the first seconds, nor under a hand that moves', async () => {
    const world = new World();
    world.ahead.standBy(() => ['radio']);
    await world.pass(60_000);
    expect([world.begun, world.rooms]).toEqual([[], 0]);
    for (let i = 0; i < 20; i++) {
      world.ahead.stirred();
      await world.pass(QUIET_MS - 1);
    }
    expect(world.begun).toEqual([]);
    await world.pass(2 * QUIET_MS);
    expect(world.begun).toEqual(['radio 1']);
    const early = new World();
    early.ahead.standBy(() => ['radio']);
    early.ahead.stirred();
    await early.pass(FIRST_MS);
    expect(early.begun).toEqual([]);
  });

  it('waits while nobody can see the page', async () => {
    const world = new World();
    world.visible = false;
    await standing(world, 'radio');
    await world.pass(60_000);
    expect(world.begun).toEqual([]);
    world.visible = true;
    world.ahead.stirred();
    await world.pass(2 * QUIET_MS);
    expect(world.begun).toEqual(['radio 1']);
  });

  it('gives way to a hand, and deals what was called off later', async () => {
    const world = new World();
    await standing(world, 'radio', 'tuner');
    world.ahead.approach('heron').near(true);
    await world.pass(NEAR_MS);
    expect(world.jobs[0]!.signal.aborted).toBe(true);
    expect(world.begun).toEqual(['radio 1', 'heron 2']);
    expect(world.jobs[1]!.hurry).toBe(true);
    world.jobs[1]!.end();
    await world.pass(2 * QUIET_MS);
    expect(world.begun.at(-1)).toBe('radio 3');
  });

  it('lets the one be that a hand reaches for in the middle of it, and goes on where a practice job is looked at', async () => {
    const world = new World();
    const stop = await standing(world, 'radio', 'tuner');
    world.ahead.approach('practice').near(true);
    world.ahead.approach('radio').reach();
    await settled();
    world.ahead.headFor('radio');
    stop();
    const opened = world.open('radio');
    await settled();
    expect(world.jobs[0]!.signal.aborted).toBe(false);
    world.jobs[0]!.end();
    expect(await opened).toEqual(one('radio', 1));
    expect(world.begun).toEqual(['radio 1']);
  });

  it('ends with the page that it stood for, and keeps what it had', async () => {
    const world = new World();
    const stop = await standing(world, 'radio', 'tuner');
    world.jobs[0]!.end();
    await world.pass(REST_MS);
    world.ahead.headFor('practice');
    stop();
    expect(world.jobs[1]!.signal.aborted).toBe(true);
    await world.pass(60_000);
    expect(world.begun).toEqual(['radio 1', 'tuner 2']);
    expect(await world.open('radio')).toEqual(one('radio', 1));
  });

  it('is called off by any opening', async () => {
    const world = new World();
    await standing(world, 'radio');
    expect(await world.open('tuner')).toEqual(one('tuner', 2));
    expect(world.jobs[0]!.signal.aborted).toBe(true);
  });
});

describe('an address', () => {
  it('that leads to a job has it dealt while the room is fetched', async () => {
    const world = new World();
    world.ahead.headFor('radio');
    await settled();
    expect(world.begun).toEqual(['radio 1']);
    expect(world.jobs[0]!.hurry).toBe(true);
    world.jobs[0]!.end();
    expect(await world.open('radio')).toEqual(one('radio', 1));
  });
});

/** How a run on the bench is kept, with a clock wound by hand: what is written when, and when nothing more is. Source: the house's own promises. */
import { describe, expect, it, vi } from 'vitest';
import { type BenchStoreGiven, createBenchStore, type TakenUp } from '../../src/app/benchStore.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { scenarioHash } from '../../src/files/scenarioFile.ts';
import { createFrameLoop } from '../../src/kit/frameLoop.ts';
import { resumeRun } from '../../src/run/runLog.ts';
import type { OpenRun } from '../../src/services/store/keptRuns.ts';
import { wholeJob } from '../session/acts.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { madeTime } from './madeTime.ts';

const setup = setupOf('first-curve');
const acts = wholeJob(setup);
const level = (value: number): BenchEvent => ({ type: 'controlSet', control: 'levelDb', value });

/** A page whose time passes only when it is told to; what it wrote stands in order. */
function page(taken: TakenUp | null = null, change: Partial<BenchStoreGiven> = {}) {
  const { now, after, pass } = madeTime();
  const saved: OpenRun[] = [];
  const left: OpenRun[] = [];
  const finished = vi.fn();
  const store = createBenchStore(
    {
      setup,
      runId: 'r1',
      loop: createFrameLoop((callback) => after(16, () => callback(now()))),
      now,
      after,
      save: async (run) => saved.push(run),
      saveLast: (run) => left.push(run),
      heard: () => {},
      finished,
      left: vi.fn(),
      ...change,
    },
    taken,
  );
  /** Through the briefing to work. */
  const begun = () => {
    store.act(acts[0]!);
    store.begin();
    pass(200);
    saved.length = 0;
  };
  return { store, saved, left, finished, pass, begun };
}

const doAll = (store: ReturnType<typeof page>['store'], events: readonly BenchEvent[]): void => {
  for (const event of events) expect(store.act(event)).toMatchObject({ ok: true });
};

describe('writing', () => {
  it('follows an act within 150 ms, once for all that came meanwhile', () => {
    const { store, saved, pass, begun } = page();
    begun();
    store.act(level(-40));
    pass(100);
    store.act(level(-41));
    expect(saved).toHaveLength(0);
    pass(50);
    expect(saved).toHaveLength(1);
    expect(saved[0]!.events.slice(-2)).toMatchObject([{ value: -40 }, { value: -41 }]);
    pass(1000);
    expect(saved).toHaveLength(1);
  });

  it('tells the whole state: run, scenario, learner, time, turns and session', () => {
    const { store, saved, pass } = page();
    store.begin();
    pass(2000);
    doAll(store, acts.slice(0, 9));
    pass(150);
    expect(saved.at(-1)).toMatchObject({
      runId: 'r1',
      scenarioId: 'first-curve',
      scenario: setup.scenario,
      learner: null,
      turns: store.state().turnsMade,
      session: { format: 'haystack-session', scenario: 'first-curve' },
    });
    expect(saved.at(-1)!.events).toHaveLength(9);
  });

  it('notes the time alone every five seconds of work, and never while the bench is covered', () => {
    const { store, saved, pass, begun } = page();
    begun();
    pass(11_000);
    expect(saved.length).toBe(2);
    store.suspend();
    pass(200);
    const covered = saved.length;
    const { elapsedMs } = saved.at(-1)!;
    pass(60_000);
    expect(saved.length).toBe(covered);
    store.resume();
    pass(150);
    expect(saved.at(-1)!.elapsedMs - elapsedMs).toBeLessThan(500);
  });

  it('of a page that goes away is done before it returns, what was gathered in it', () => {
    const { store, left, begun } = page();
    begun();
    store.actSoon(level(-33));
    store.flush();
    expect(left).toHaveLength(1);
    expect(left[0]!.events.at(-1)).toMatchObject({ value: -33 });
  });
});

describe('a bench that goes to another tab', () => {
  it('writes what was gathered and not yet written, and stands still', async () => {
    const { store, saved, left, pass, begun } = page();
    begun();
    store.actSoon(level(-33));
    await store.handOver();
    expect(saved.at(-1)!.events.at(-1)).toMatchObject({ value: -33 });
    const seconds = store.elapsedSeconds();
    const writes = saved.length;
    expect(store.act(level(-20))).toEqual({ ok: false, reason: 'runIsOver' });
    store.actSoon(level(-21));
    store.askToSign();
    store.suspend();
    store.flush();
    await store.close();
    pass(60_000);
    expect(store.elapsedSeconds()).toBe(seconds);
    expect(store.state().controls.levelDb).toBe(-33);
    expect(store.session().stage).toBe('working');
    expect([saved.length, left.length]).toEqual([writes, 0]);
  });

  it('waits until the writing is done', async () => {
    let written = (): void => {};
    const { store, begun } = page(null, { save: () => new Promise((resolve) => (written = () => resolve(true))) });
    begun();
    store.act(level(-33));
    const gone = vi.fn();
    const going = store.handOver().then(gone);
    await Promise.resolve();
    expect(gone).not.toHaveBeenCalled();
    written();
    await going;
    expect(gone).toHaveBeenCalledTimes(1);
  });

  it('writes nothing where it was taken away', async () => {
    const { store, saved, left, pass, begun } = page();
    begun();
    store.act(level(-33));
    store.freeze();
    pass(60_000);
    store.flush();
    await store.close();
    expect([saved, left]).toEqual([[], []]);
  });
});

describe('closing', () => {
  it('writes what stands, once, and nothing after it', async () => {
    const { store, saved, pass, begun } = page();
    begun();
    store.act(level(-33));
    await store.close();
    pass(60_000);
    expect(saved).toHaveLength(1);
    expect(saved[0]!.events.at(-1)).toMatchObject({ value: -33 });
  });
});

describe('signing', () => {
  it('hands out the run and writes the open record no more', async () => {
    const { store, saved, left, finished, pass, begun } = page();
    begun();
    doAll(store, acts.slice(1, -1));
    store.askToSign();
    store.sign();
    // Everything up to the signing stands in the open record before the run is handed out.
    expect(saved.at(-1)!.events).toHaveLength(acts.length - 1);
    expect(finished).toHaveBeenCalledTimes(1);
    expect(finished.mock.calls[0]![0].events.at(-1)).toMatchObject({ type: 'signedOff' });
    const writes = saved.length;
    store.sign();
    store.flush();
    await store.close();
    pass(1000);
    expect(finished).toHaveBeenCalledTimes(1);
    expect([saved.length, left.length]).toEqual([writes, 0]);
  });
});

describe('throwing away', () => {
  it('leaves no trace of the run', async () => {
    const leave = vi.fn();
    const { store, saved, pass, begun } = page(null, { left: leave });
    begun();
    store.act(level(-33));
    store.abandon();
    pass(1000);
    await store.close();
    expect(leave).toHaveBeenCalledTimes(1);
    expect(saved).toEqual([]);
  });
});

describe('taking up', () => {
  it('stands where the run was left: bench, session and clock', async () => {
    const before = page();
    before.store.begin();
    before.pass(3000);
    doAll(before.store, acts.slice(0, 12));
    before.store.suspend();
    await before.store.close();
    const kept = JSON.parse(JSON.stringify(before.saved.at(-1)!)) as OpenRun;
    const { run } = resumeRun(setup, kept.learner, kept.events);
    const after = page({ run, elapsedMs: kept.elapsedMs, session: kept.session });
    expect(after.store.state()).toEqual(before.store.state());
    expect(after.store.session()).toEqual(before.store.session());
    expect(after.store.elapsedSeconds()).toBeCloseTo(before.store.elapsedSeconds(), 2);
    after.pass(5000);
    expect(after.store.elapsedSeconds()).toBeCloseTo(before.store.elapsedSeconds(), 2);
  });

  it.each([
    ['none', undefined],
    ['rubbish', { machine: 7 }],
    ['of another scenario', { format: 'haystack-session', version: 1, scenario: 'x', machine: {} }],
  ])('with a session that is %s begins with the briefing, the bench as it was left', (_, session) => {
    const { run } = resumeRun(setup, null, [{ atMs: 5, ...level(-33) }]);
    const { store } = page({ run, elapsedMs: 900, session });
    expect(store.session().stage).toBe('briefing');
    expect(store.state().controls.levelDb).toBe(-33);
    expect(store.elapsedSeconds()).toBe(0.9);
  });
});

describe('a sealed run', () => {
  const sealed = { ...setup, scenario: { ...setup.scenario, sealed: true } };
  const aids = { hints: false, toleranceMarks: false };

  it('names its scenario by hash, tells no proof by ear and no pip by name, and keeps the learner\u2019s ticks', () => {
    const heard = vi.fn();
    const hidden = { ...sealed, scenario: { ...sealed.scenario, aids } };
    const { store, saved, pass } = page(null, { setup: hidden, heard });
    store.begin();
    doAll(
      store,
      acts.filter(({ type }) => type !== 'signedOff'),
    );
    store.tickStep(1);
    pass(200);
    const kept = saved.at(-1)!;
    expect(kept).toMatchObject({
      scenarioId: 'first-curve',
      scenario: null,
      scenarioHash: scenarioHash(hidden.scenario),
    });
    expect(JSON.stringify(kept)).not.toMatch(/phaseLagDegrees|residualPhase|"faults"|"seed"|compressionDb/);
    expect(kept.session).toMatchObject({ machine: { context: { facts: null, slugs: null, ticked: [1] } } });
    const sounds = heard.mock.calls.flatMap(([list]) => list as readonly { readonly kind: string }[]);
    expect(sounds.length).toBeGreaterThan(0);
    expect(sounds.filter(({ kind }) => kind === 'proof')).toEqual([]);
    const { tags } = store.display();
    expect(tags.length).toBeGreaterThan(0);
    for (const [i, tag] of tags.entries()) expect(tag).toMatchObject({ kind: 'unnamed', hz: 0, number: i + 1 });
    expect(store.display()).toBe(store.display());
  });

  it('rings at a proof in practice', () => {
    const heard = vi.fn();
    const { store } = page(null, { heard });
    store.begin();
    doAll(
      store,
      acts.filter(({ type }) => type !== 'signedOff'),
    );
    const sounds = heard.mock.calls.flatMap(([list]) => list as readonly { readonly kind: string }[]);
    expect(sounds.some(({ kind }) => kind === 'proof')).toBe(true);
  });
});

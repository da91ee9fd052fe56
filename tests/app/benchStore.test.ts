/** The live bench: what is solved waits for the frame, and log, session and clock are none the wiser. Common practice, no source. */
import { describe, expect, it, vi } from 'vitest';
import { type BenchStore, createBenchStore, type TakenUp } from '../../src/app/benchStore.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { createFrameLoop } from '../../src/kit/frameLoop.ts';
import { type Run, resumeRun } from '../../src/run/runLog.ts';
import type { OpenRun } from '../../src/services/store/keptRuns.ts';
import { pointerActs } from '../e2e/pointerActs.ts';
import { stripSetup } from '../session/setups.ts';
import { madeTime } from './madeTime.ts';

const solved = vi.hoisted(() => ({ facts: 0, displays: 0 }));
vi.mock('../../src/bench/bench.ts', async (original) => {
  const { createBench } = await original<typeof import('../../src/bench/bench.ts')>();
  return {
    createBench(...all: Parameters<typeof createBench>) {
      const bench = createBench(...all);
      return {
        ...bench,
        display(state: Parameters<typeof bench.display>[0]) {
          solved.displays++;
          return bench.display(state);
        },
        facts(state: Parameters<typeof bench.facts>[0]) {
          solved.facts++;
          return bench.facts(state);
        },
      };
    },
  };
});

interface Live {
  readonly store: BenchStore;
  readonly saved: OpenRun[];
  readonly finished: Run[];
  readonly asked: () => number;
  frame(): void;
  pass(milliseconds: number): void;
}

function live(
  taken: TakenUp | null = null,
  timeLimitSeconds: number | null = null,
  endsAtMs: number | null = null,
): Live {
  const time = madeTime();
  const saved: OpenRun[] = [];
  const finished: Run[] = [];
  let waiting: ((nowMs: number) => void)[] = [];
  const store = createBenchStore(
    {
      setup: stripSetup({ timeLimitSeconds }),
      runId: 'run',
      endsAtMs,
      loop: createFrameLoop((callback) => waiting.push(callback)),
      now: time.now,
      after: time.after,
      save: async (run) => void saved.push(run),
      saveLast: (run) => void saved.push(run),
      heard: () => {},
      finished: (run) => void finished.push(run),
      left: () => {},
    },
    taken,
  );
  const frame = (): void => {
    const now = waiting;
    waiting = [];
    for (const callback of now) callback(time.now());
  };
  return { store, saved, finished, frame, pass: time.pass, asked: () => waiting.length };
}

const acts = pointerActs(stripSetup());
const turn: BenchEvent = { type: 'slugTurned', slug: 'T1', turns: 1 / 8 };

function readied(bench: Live): Live {
  bench.store.begin();
  for (const act of acts.filter(({ type }) => type !== 'slugTurned' && type !== 'toolTaken')) {
    bench.pass(40);
    bench.store.act(act);
  }
  bench.store.act({ type: 'toolTaken', tool: 'hex' });
  bench.frame();
  return bench;
}

describe('a time that a sheet gives for the run', () => {
  it('lets nothing be done after it, and the signature stands at it, however late it comes', () => {
    const { store, pass, finished } = readied(live(null, null, 60_000));
    pass(60_000 - store.elapsedSeconds() * 1000);
    expect(store.act(turn).ok).toBe(true);
    pass(37_000);
    const before = store.state().turnsMade;
    expect(store.act(turn)).toEqual({ ok: false, reason: 'runIsOver' });
    expect(store.state().turnsMade).toBe(before);
    store.sign();
    expect(finished.map(({ events }) => events.at(-1))).toMatchObject([{ type: 'signedOff', atMs: 60_000 }]);
  });
});

describe('an act', () => {
  it('is in the log and the state at once, and solved in the frame, once for many', () => {
    const { store, frame } = readied(live());
    store.display();
    const before = { ...solved, turns: store.state().turnsMade };
    for (let i = 0; i < 5; i++) expect(store.act(turn).ok).toBe(true);
    expect(store.state().turnsMade).toBeCloseTo(before.turns + 5 / 8);
    expect(solved).toMatchObject({ facts: before.facts, displays: before.displays });
    let heard = 0;
    store.subscribe(() => {
      heard++;
      store.display();
      store.facts();
      store.session();
    });
    frame();
    expect(heard).toBe(1);
    expect(solved.displays).toBe(before.displays + 1);
    // The facts are asked for by the session and by the page; the bench keeps them.
    expect(solved.facts).toBe(before.facts + 2);
    frame();
    expect(heard).toBe(1);
  });

  it('leaves the same log and the same session whether anybody asks between acts or not', () => {
    const [asking, quiet] = [live(), live()];
    asking.store.begin();
    quiet.store.begin();
    for (const act of acts) {
      for (const bench of [asking, quiet]) {
        bench.pass(250);
        expect(bench.store.act(act).ok || act.type !== 'signedOff').toBe(true);
      }
      asking.frame();
      asking.store.session();
    }
    asking.store.flush();
    quiet.store.flush();
    expect(quiet.saved.at(-1)!.events.length).toBeGreaterThan(20);
    expect(quiet.saved.at(-1)).toEqual(asking.saved.at(-1));
    expect(quiet.store.session()).toEqual(asking.store.session());
  });

  it('is refused at once, with the reason, and changes nothing', () => {
    const { store, asked } = live();
    store.begin();
    const reasons: string[] = [];
    store.onRefused((reason) => reasons.push(reason));
    const before = store.state();
    expect(store.act(turn)).toEqual({ ok: false, reason: 'noToolInHand' });
    expect(reasons).toEqual(['noToolInHand']);
    expect(store.state()).toBe(before);
    expect(asked()).toBe(1);
  });

  it('that ends the run stops the clock without waiting for a frame', () => {
    const { store, pass } = live();
    store.begin();
    store.act({ type: 'cautionsAcknowledged' });
    pass(1500);
    store.act({ type: 'powerSwitched', on: true });
    store.act({ type: 'leadConnected', lead: 'earth', to: 'CH' });
    const stopped = store.state().stopped !== null;
    expect(stopped).toBe(true);
    pass(4000);
    expect(store.elapsedSeconds()).toBe(1.5);
    expect(store.session().stage).toBe('stopped');
  });
});

describe('a hand that goes on moving', () => {
  it('is gathered into acts that are done in the frame, and the page hears of them in the same frame', () => {
    const { store, frame, pass } = readied(live());
    pass(100);
    const before = store.state().turnsMade;
    let heardAt = Number.NaN;
    store.subscribe(() => {
      heardAt = store.state().turnsMade;
    });
    for (let i = 0; i < 4; i++) store.actSoon({ ...turn, turns: 1 / 64 });
    expect(store.state().turnsMade).toBe(before);
    frame();
    expect(heardAt).toBeCloseTo(before + 4 / 64);
    // The next act waits until some thirtieth of a second has gone by.
    store.actSoon({ ...turn, turns: 1 / 64 });
    pass(16);
    frame();
    expect(store.state().turnsMade).toBeCloseTo(before + 4 / 64);
    pass(17);
    frame();
    expect(store.state().turnsMade).toBeCloseTo(before + 5 / 64);
  });
});

describe('a hand on a slow machine', () => {
  /** how many acts a frame handed on, frame after frame, while the hand moves in each and an act takes so long to tell */
  const actsBy = (tellsMs: number, frameMs: number): number[] => {
    const { store, frame, pass } = readied(live());
    pass(100);
    store.subscribe(() => pass(tellsMs));
    return Array.from({ length: 6 }, () => {
      const before = store.state().turnsMade;
      store.actSoon({ ...turn, turns: 1 / 64 });
      frame();
      pass(frameMs);
      return store.state().turnsMade === before ? 0 : 1;
    });
  };

  it('has every other frame to itself, without an act', () => {
    expect(actsBy(12, 40)).toEqual([1, 0, 1, 0, 1, 0]);
  });

  it('shares each frame with an act where frames are far apart but acts are quick', () => {
    expect(actsBy(2, 40)).toEqual([1, 1, 1, 1, 1, 1]);
  });
});

describe('time alone', () => {
  it('tells of each second and asks for no other frame', () => {
    const { store, frame, pass, asked } = readied(live());
    pass(5000);
    frame();
    let told = 0;
    let seconds = 0;
    store.subscribe(() => told++);
    store.onSecond(() => seconds++);
    for (let i = 0; i < 10; i++) {
      pass(1000);
      expect(asked()).toBe(1);
      frame();
      expect(asked()).toBe(0);
    }
    expect(seconds).toBe(10);
    expect(told).toBe(0);
  });

  it('is told in steps of five where nothing has been done for a while, and by the second again after an act', () => {
    const { store, frame, pass } = readied(live());
    const told: number[] = [];
    store.act(turn);
    frame();
    const from = Math.floor(store.elapsedSeconds());
    store.onSecond(() => told.push(Math.floor(store.elapsedSeconds()) - from));
    const wait = (seconds: number): void => {
      for (let i = 0; i < seconds; i++) {
        pass(1000);
        frame();
      }
    };
    wait(30);
    expect(told.slice(0, 15)).toEqual(Array.from({ length: 15 }, (_, i) => i + 1));
    const later = told.filter((second) => second > 16).map((second) => second + from);
    expect(later).toHaveLength(3);
    for (const second of later) expect(second % 5).toBe(0);
    store.act({ ...turn, turns: -1 / 64 });
    frame();
    told.length = 0;
    wait(4);
    expect(told).toHaveLength(4);
  });

  it('wakes the page no more often than in those steps, also where time will run out much later', () => {
    const { store, frame, pass, asked } = readied(live(null, 7200));
    store.act(turn);
    frame();
    for (let i = 0; i < 30; i++) {
      pass(1000);
      frame();
    }
    let frames = 0;
    for (let i = 0; i < 30; i++) {
      pass(1000);
      frames += asked();
      frame();
    }
    expect(frames).toBe(6);
  });

  it('is told by the second to the end where it runs out', () => {
    const { store, frame, pass } = readied(live(null, 60));
    let seconds = 0;
    store.onSecond(() => seconds++);
    for (let i = 0; i < 40; i++) {
      pass(1000);
      frame();
    }
    expect(seconds).toBe(40);
  });

  it('brings a turned slug to rest, and the page is told', () => {
    const { store, frame, pass } = readied(live());
    store.act(turn);
    frame();
    expect(store.session().alignment).toBe('turning');
    let told = 0;
    store.subscribe(() => told++);
    pass(3100);
    frame();
    expect(store.session().alignment).toBe('settled');
    expect(told).toBe(1);
  });

  it('brings a run to its limit, and nothing is left but to sign', () => {
    const { store, frame, pass, finished } = readied(live(null, 60));
    pass(61_000);
    frame();
    expect(store.session()).toMatchObject({ stage: 'signing', timeUp: true });
    store.sign();
    expect(finished).toHaveLength(1);
  });

  it('stands while the run is suspended', () => {
    const { store, frame, pass, asked } = readied(live());
    store.suspend();
    frame();
    const at = store.elapsedSeconds();
    pass(30_000);
    expect(store.elapsedSeconds()).toBe(at);
    expect(asked()).toBe(0);
    store.resume();
    pass(1000);
    expect(Math.round(1000 * store.elapsedSeconds())).toBe(Math.round(1000 * at) + 1000);
  });
});

describe('a run taken up again', () => {
  it('stands as it stood', () => {
    const first = readied(live());
    first.store.act(turn);
    first.pass(700);
    first.store.flush();
    const kept = JSON.parse(JSON.stringify(first.saved.at(-1))) as OpenRun;
    const { elapsedMs, session } = kept;
    const again = live({ run: resumeRun(stripSetup(), null, kept.events).run, elapsedMs, session });
    const { store } = again;
    // How the slugs stand is looked at anew once they rest.
    for (const bench of [first, again]) {
      bench.pass(3100);
      bench.frame();
    }
    expect(store.state()).toEqual(first.store.state());
    expect(store.session()).toEqual(first.store.session());
    expect(store.elapsedSeconds()).toBe(first.store.elapsedSeconds());
  });
});

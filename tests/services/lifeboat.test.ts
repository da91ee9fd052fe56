/** The last state of a run, left while the page goes away, and what the logbook does with it where there is no database. Source: common practice, no source. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { OpenRun } from '../../src/services/store/keptRuns.ts';
import { createLifeboat } from '../../src/services/store/lifeboat.ts';
import { openLogbook } from '../../src/services/store/logbook.ts';
import { canSetup } from '../bench/fixture.ts';

const run = (change: Partial<OpenRun> = {}): OpenRun => ({
  ...{ scenarioId: 'fixture', runId: 'r1', scenario: canSetup().scenario, events: [], elapsedMs: 4000 },
  ...{ session: { value: 'align' }, turns: 0 },
  ...change,
});

function store(held: Record<string, string> = {}) {
  return {
    held,
    getItem: (key: string): string | null => held[key] ?? null,
    setItem: (key: string, text: string): void => {
      held[key] = text;
    },
    removeItem: (key: string): void => {
      delete held[key];
    },
  };
}

const blocked = (): never => {
  throw new Error('blocked');
};

describe('the lifeboat', () => {
  it('gives back what was put in, until it is cleared, and to nobody of another name', () => {
    const shelf = store();
    const boat = createLifeboat('a', () => shelf);
    expect(boat.find()).toBeNull();
    expect(boat.put(run())).toBe(true);
    expect(createLifeboat('a', () => shelf).find()).toEqual(run());
    expect(createLifeboat('b', () => shelf).find()).toBeNull();
    boat.clear();
    expect(boat.find()).toBeNull();
    expect(shelf.held).toEqual({});
  });

  it('without storage, without room, or with rubbish in it, stays calm', () => {
    const none = createLifeboat('a', blocked);
    expect(none.put(run())).toBe(false);
    expect(none.find()).toBeNull();
    expect(() => none.clear()).not.toThrow();
    const full = createLifeboat('a', () => ({ ...store(), setItem: blocked }));
    expect(full.put(run())).toBe(false);
    expect(createLifeboat('a', () => store({ 'a-lifeboat': '{"runId":' })).find()).toBeNull();
  });
});

describe('the logbook without a database', () => {
  afterEach(() => {
    vi.unstubAllGlobals();
  });
  const opened = async (held: Record<string, string>) => {
    const shelf = store(held);
    vi.stubGlobal('localStorage', shelf);
    return { shelf, logbook: await openLogbook('t') };
  };

  it('says so, and goes on in memory', async () => {
    const { logbook } = await opened({});
    expect(logbook.note()).toBe('memoryOnly');
    await logbook.saveOpen(run());
    expect(logbook.openRuns()).toEqual([run()]);
    await logbook.keep({ runId: 'r2', scenarioId: 'x', total: 80, passed: true, serial: 2, text: '{}' });
    await logbook.keep({ runId: 'r1', scenarioId: 'x', total: 70, passed: true, serial: 1, text: '{}' });
    expect(logbook.keptRuns().map((kept) => kept.runId)).toEqual(['r1', 'r2']);
    await logbook.dropOpen('fixture');
    expect(logbook.openRuns()).toEqual([]);
  });

  it('takes up the run that was left, and leaves the boat as it is, for it is all there is', async () => {
    const { shelf, logbook } = await opened({ 't-lifeboat': JSON.stringify(run()) });
    expect(logbook.openRuns()).toEqual([run()]);
    expect(shelf.held['t-lifeboat']).toBeDefined();
    await logbook.dropOpen('fixture');
    expect(shelf.held['t-lifeboat']).toBeUndefined();
  });

  it('takes nothing that is no run', async () => {
    for (const text of ['[]', '7', '{"scenarioId":"fixture"}']) {
      const { logbook } = await opened({ 't-lifeboat': text });
      expect(logbook.openRuns(), text).toEqual([]);
      vi.unstubAllGlobals();
    }
  });

  it('leaves the last state at once when the page goes', async () => {
    const { shelf, logbook } = await opened({});
    logbook.saveLast(run({ turns: 3 }));
    expect(JSON.parse(shelf.held['t-lifeboat']!)).toEqual(run({ turns: 3 }));
  });
});

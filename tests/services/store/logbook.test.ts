/** What the logbook keeps, over visits, over failing storage and between tabs. Source: the house's own promises; IndexedDB as fake-indexeddb has it. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { KeptRun } from '../../../src/services/store/keptRuns.ts';
import {
  asked,
  emptyMachine,
  fillDisk,
  openRun,
  openTab,
  rawDatabase,
  shelf,
  signedRun,
  startTab,
  tabs,
} from './storage.ts';

beforeEach(emptyMachine);
afterEach(() => {
  vi.restoreAllMocks();
});

const full = (): never => {
  throw new DOMException('no room', 'QuotaExceededError');
};

describe('the logbook', () => {
  it('is there at once and empty, and tells when it has been read', async () => {
    await (await openTab()).logbook.keep(signedRun('r1').run, 'file');
    const { logbook } = startTab();
    expect(logbook.isReady()).toBe(false);
    expect([logbook.keptRuns(), logbook.openRuns(), logbook.asides()]).toEqual([[], [], []]);
    const heard = new Promise<void>((resolve) => {
      logbook.subscribe(() => {
        if (logbook.isReady()) resolve();
      });
    });
    await heard;
    await logbook.ready;
    expect(logbook.keptRuns()).toHaveLength(1);
  });

  it('gives back an open run as it was written last', async () => {
    const { logbook } = await openTab();
    await logbook.saveOpen(openRun('r1', 4));
    expect(await logbook.saveOpen(openRun('r1', 9))).toBe(true);
    const again = (await openTab()).logbook;
    expect(again.openRuns()).toMatchObject([{ runId: 'r1', scenarioId: 'first-curve' }]);
    const whole = { run: openRun('r1', 9), recorded: 9, text: null };
    expect(await again.readOpen('first-curve')).toMatchObject(whole);
    expect(await again.readOpen('both-ways')).toBeNull();
  });

  it('keeps a signed run with its file, and lets go of the open one in the same act', async () => {
    const { logbook } = await openTab();
    await logbook.saveOpen(openRun('r1'));
    const { run, text } = signedRun('r1');
    expect(await logbook.keep(run, text)).toBe('r1');
    expect(logbook.isStored('r1')).toBe(true);
    const again = (await openTab()).logbook;
    expect(again.openRuns()).toEqual([]);
    expect(again.keptRuns()).toEqual([{ ...run, serial: 1 }]);
    expect(await again.readText('r1')).toBe(text);
    expect(await again.readText('r2')).toBeNull();
  });

  it('never writes over a kept run: the later one gets another name', async () => {
    const { logbook } = await openTab();
    const { run } = signedRun('r1');
    await logbook.keep(run, 'first');
    const name = await logbook.keep({ ...run, total: 3 }, 'second');
    expect(name).not.toBe('r1');
    const again = (await openTab()).logbook;
    expect(again.keptRuns().map(({ runId, total, serial }) => [runId, total, serial])).toEqual([
      ['r1', run.total, 1],
      [name, 3, 2],
    ]);
    expect(await again.readText('r1')).toBe('first');
    expect(await again.readText(name)).toBe('second');
  });

  it('drops the open run that is wanted no more, and that one only', async () => {
    const { logbook } = await openTab();
    await logbook.saveOpen(openRun('r1'));
    await logbook.saveOpen(openRun('r2'));
    await logbook.dropOpen('r2');
    const { run } = (await (await openTab()).logbook.readOpen('first-curve'))!;
    expect(run.runId).toBe('r1');
  });

  it('of two open runs of one scenario shows the one that was worked at last', async () => {
    const { logbook } = await openTab();
    await logbook.saveOpen(openRun('r1'));
    await logbook.saveOpen(openRun('r2'));
    await logbook.saveOpen(openRun('r1'));
    for (const { openRuns, readOpen } of [logbook, (await openTab()).logbook]) {
      expect(openRuns().map(({ runId }) => runId)).toEqual(['r1']);
      expect((await readOpen('first-curve'))!.run.runId).toBe('r1');
    }
    expect(await shelf('open')).toHaveLength(2);
  });

  it('gives everything that is here as one text', async () => {
    const { logbook } = await openTab();
    await logbook.saveOpen(openRun('r1'));
    await logbook.keep(signedRun('r2').run, 'the file');
    const { stored } = JSON.parse(await logbook.everything());
    expect(stored.open).toMatchObject([{ runId: 'r1' }]);
    expect(stored.kept).toMatchObject([{ runId: 'r2' }]);
    expect(stored.texts).toEqual([{ runId: 'r2', text: 'the file' }]);
  });
});

describe('the index of kept runs', () => {
  const line = (id: string, points: number, slug: string | null): KeptRun['lines'][number] => ({
    id,
    points,
    max: 10,
    cause: slug === null ? null : { kind: 'slug', slug, turns: 0.5 },
  });

  it('finds them by date, scenario, receiver, track, points, seal, learner, line and cause', async () => {
    const { logbook } = await openTab();
    const { run } = signedRun('a');
    const lines = [line('G1', 10, null), line('G2:455000', 4, 'A1')];
    await logbook.keep({ ...run, lines, total: 90, signedAtMs: 100 }, '');
    const part = { ...line('G1', 9.98, null), cause: { kind: 'part', part: 'C9' } as const };
    const other = {
      ...run,
      runId: 'b',
      scenarioId: 'x',
      receiver: 'set-y',
      track: 'am',
      sealed: true,
      learner: 'Ines',
    };
    await logbook.keep({ ...other, lines: [part, line('G2:455000', 9.998, null)], total: 40, signedAtMs: 200 }, '');
    const base = await rawDatabase();
    const found = async (index: string, key: IDBValidKey | IDBKeyRange): Promise<unknown[]> => {
      const records = await asked(base.transaction('kept').objectStore('kept').index(index).getAll(key));
      return records.map(({ runId }) => runId);
    };
    expect(await found('byDate', IDBKeyRange.lowerBound(150))).toEqual(['b']);
    expect(await found('byScenario', 'first-curve')).toEqual(['a']);
    expect(await found('byReceiver', 'set-y')).toEqual(['b']);
    expect(await found('byTrack', 'am')).toEqual(['b']);
    expect(await found('byPoints', IDBKeyRange.lowerBound(80))).toEqual(['a']);
    expect(await found('bySealed', 1)).toEqual(['b']);
    expect(await found('byLearner', 'Ines')).toEqual(['b']);
    expect(await found('byEarned', 'G1')).toEqual(['a']);
    expect(await found('byEarned', 'G2:455000')).toEqual(['b']);
    expect(await found('byLost', 'G2:455000')).toEqual(['a']);
    expect(await found('byCause', 'slug A1')).toEqual(['a']);
    expect(await found('byCause', 'part C9')).toEqual(['b']);
    base.close();
  });

  it('has every line of the report with its full marks', async () => {
    const { logbook } = await openTab();
    const { run, text } = signedRun('a');
    await logbook.keep(run, text);
    const [kept] = (await openTab()).logbook.keptRuns();
    expect(kept!.lines.length).toBeGreaterThan(5);
    expect(kept!.lines.reduce((sum, { max }) => sum + max!, 0)).toBeCloseTo(100, 0);
    expect(kept).toMatchObject({ track: 'first-sweep', signedAtMs: 1.7e12, sealed: false, learner: null });
  });
});

describe('storage that is full', () => {
  it('keeps the signed run in memory, says so, and leaves the open record where it is', async () => {
    const { logbook } = await openTab();
    await logbook.saveOpen(openRun('r1'));
    const heard = vi.fn();
    logbook.subscribe(heard);
    const disk = fillDisk();
    const { run, text } = signedRun('r1');
    expect(await logbook.keep(run, text)).toBe('r1');
    expect(logbook.trouble()).toBe('full');
    expect(heard).toHaveBeenCalled();
    expect(logbook.isStored('r1')).toBe(false);
    expect(logbook.keptRuns()).toMatchObject([{ runId: 'r1', total: run.total }]);
    expect(await logbook.readText('r1')).toBe(text);
    // In this page the run is signed; on the machine it still lies open.
    expect(logbook.openRuns()).toEqual([]);
    expect(await logbook.readOpen('first-curve')).toBeNull();
    expect(await shelf('open')).toMatchObject([{ runId: 'r1' }]);
    expect(await shelf('kept')).toEqual([]);
    expect(await logbook.storeAgain()).toBe(false);
    disk.free();
    expect(await logbook.storeAgain()).toBe(true);
    expect(logbook.trouble()).toBeNull();
    expect(logbook.isStored('r1')).toBe(true);
    expect(await shelf('open')).toEqual([]);
    expect(await shelf('texts')).toEqual([{ runId: 'r1', text }]);
  });

  it('writes it by itself with the next write that goes through', async () => {
    const { logbook } = await openTab();
    const disk = fillDisk();
    await logbook.keep(signedRun('r1').run, 'file');
    disk.free();
    await logbook.saveOpen(openRun('r2'));
    await vi.waitFor(() => expect(logbook.isStored('r1')).toBe(true));
    expect(await shelf('kept')).toMatchObject([{ runId: 'r1' }]);
  });

  it('keeps the open run in memory, and in the lifeboat where the page goes', async () => {
    const { logbook, held } = await openTab();
    const disk = fillDisk();
    expect(await logbook.saveOpen(openRun('r1'))).toBe(false);
    expect((await logbook.readOpen('first-curve'))!.run).toEqual(openRun('r1'));
    logbook.saveLast(openRun('r1', 11));
    expect(Object.keys(held)).toEqual(['haystack-lifeboat-r1']);
    await vi.waitFor(async () => expect(logbook.trouble()).toBe('full'));
    expect(Object.keys(held)).toEqual(['haystack-lifeboat-r1']);
    disk.free();
    const again = (await openTab(held)).logbook;
    expect((await again.readOpen('first-curve'))!.run).toEqual(openRun('r1', 11));
    expect(held).toEqual({});
  });

  it('is not thought to have room because something could be read from it', async () => {
    const { logbook } = await openTab();
    await logbook.keep(signedRun('r1').run, 'file');
    fillDisk();
    await logbook.saveOpen(openRun('r2'));
    expect(await logbook.readText('r1')).toBe('file');
    await logbook.readOpen('both-ways');
    expect(logbook.trouble()).toBe('full');
  });

  it('that is tried again takes the run as it stands by then', async () => {
    const { logbook } = await openTab();
    const disk = fillDisk();
    await logbook.keep(signedRun('r1').run, 'file');
    await logbook.saveOpen(openRun('r2', 4));
    disk.free();
    const again = logbook.storeAgain();
    void logbook.saveOpen(openRun('r2', 9));
    expect(await again).toBe(true);
    expect((await (await openTab()).logbook.readOpen('first-curve'))!.run).toEqual(openRun('r2', 9));
  });

  it('takes a half-done write back whole: the file of a run never stands without its entry', async () => {
    const { logbook } = await openTab();
    await logbook.saveOpen(openRun('r1'));
    const add = IDBObjectStore.prototype.add;
    const spy = vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(function (
      this: IDBObjectStore,
      value,
      key,
    ) {
      if (this.name === 'texts') full();
      return add.call(this, value, key);
    });
    await logbook.keep(signedRun('r1').run, 'file');
    spy.mockRestore();
    expect(logbook.isStored('r1')).toBe(false);
    expect(await shelf('kept')).toEqual([]);
    expect(await shelf('open')).toHaveLength(1);
  });
});

describe('a database that cannot be had', () => {
  const withoutDatabase = async (held = {}) => {
    vi.spyOn(IDBFactory.prototype, 'open').mockImplementation(() => {
      throw new DOMException('blocked', 'SecurityError');
    });
    return openTab(held);
  };

  it('leaves everything in memory, and says so', async () => {
    const { logbook } = await withoutDatabase();
    expect(logbook.trouble()).toBe('memoryOnly');
    expect(logbook.isReady()).toBe(true);
    expect(await logbook.saveOpen(openRun('r1'))).toBe(false);
    expect((await logbook.readOpen('first-curve'))!.run).toEqual(openRun('r1'));
    const { run } = signedRun('r1');
    await logbook.keep(run, 'file');
    await logbook.keep({ ...run, runId: 'r2' }, 'file 2');
    expect(logbook.keptRuns().map(({ runId, serial }) => [runId, serial])).toEqual([
      ['r1', 1],
      ['r2', 2],
    ]);
    expect(logbook.openRuns()).toEqual([]);
    expect(await logbook.readText('r2')).toBe('file 2');
    expect(logbook.isStored('r1')).toBe(false);
  });

  it('takes up the run that was left, and leaves the boat as it is, for it is all there is', async () => {
    const run = openRun('r1');
    const held: Record<string, string> = { 'haystack-lifeboat': JSON.stringify(run) };
    const { logbook } = await withoutDatabase(held);
    expect((await logbook.readOpen('first-curve'))!.run).toEqual(run);
    expect(Object.values(held)).toHaveLength(1);
    await logbook.dropOpen('r1');
    expect(held).toEqual({});
  });

  it('is taken for lost when another page wants a newer layout, which is not kept waiting', async () => {
    const { logbook } = await openTab();
    const newer = indexedDB.open('haystack', 3);
    newer.onupgradeneeded = () => {};
    (await asked(newer)).close();
    expect(logbook.trouble()).toBe('outdated');
    expect(await logbook.saveOpen(openRun('r1'))).toBe(false);
    expect(logbook.openRuns()).toHaveLength(1);
  });
});

describe('two tabs', () => {
  it('hear of each other’s runs', async () => {
    const channel = tabs();
    const one = (await openTab({}, channel())).logbook;
    const two = (await openTab({}, channel())).logbook;
    await one.saveOpen(openRun('r1'));
    await vi.waitFor(() => expect(two.openRuns()).toHaveLength(1));
    await one.keep(signedRun('r1').run, 'file');
    await vi.waitFor(() => expect(two.keptRuns()).toHaveLength(1));
    expect(two.openRuns()).toEqual([]);
    expect(await two.readText('r1')).toBe('file');
  });

  it('that sign one run both keep a report', async () => {
    const one = (await openTab()).logbook;
    await one.saveOpen(openRun('r1'));
    const two = (await openTab()).logbook;
    const { run } = signedRun('r1');
    await one.keep(run, 'one');
    const name = await two.keep({ ...run, total: 7 }, 'two');
    const { logbook } = await openTab();
    expect(logbook.keptRuns().map(({ runId, total, serial }) => [runId, total, serial])).toEqual([
      ['r1', run.total, 1],
      [name, 7, 2],
    ]);
    expect(await logbook.readText('r1')).toBe('one');
    expect(await logbook.readText(name)).toBe('two');
  });

  it('read the run as the other left it', async () => {
    const one = (await openTab()).logbook;
    const two = (await openTab()).logbook;
    await one.saveOpen(openRun('r1', 4));
    expect((await two.readOpen('first-curve'))!.run.events).toHaveLength(4);
    const disk = fillDisk();
    await two.saveOpen(openRun('r1', 5));
    disk.free();
    await one.saveOpen(openRun('r1', 9));
    // What this tab could not write is older now than what the other wrote; it is not thrown away either.
    expect((await two.readOpen('first-curve'))!.run.events).toHaveLength(9);
    expect(two.asides().map(({ text }) => JSON.parse(text))).toEqual([openRun('r1', 5)]);
    expect(await two.storeAgain()).toBe(true);
    expect(await shelf('aside')).toHaveLength(1);
  });
});

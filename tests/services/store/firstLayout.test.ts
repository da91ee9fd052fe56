/**
 * A database that the page wrote in its first layout is carried over whole. The fixture was taken down, record by record, from a database that the page of
 * that layout wrote: two runs signed off by the technician, and one of the same scenario left lying open after 450 acts.
 */
import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { readRunFile } from '../../../src/files/runFileSchema.ts';
import { grade } from '../../../src/grading/grade.ts';
import { resumeRun } from '../../../src/run/runLog.ts';
import { linesOf } from '../../../src/services/store/indexEntry.ts';
import { createSession } from '../../../src/session/session.ts';
import { setupOf } from '../../technician/oneScenario.ts';
import { asked, emptyMachine, openTab, rawDatabase, shelf, startTab } from './storage.ts';

interface Taken {
  readonly version: number;
  readonly stores: Readonly<Record<'open' | 'kept', { keyPath: string; records: Record<string, unknown>[] }>>;
}

const FIRST = JSON.parse(
  readFileSync(new URL('../../fixtures/store/firstLayout.json', import.meta.url), 'utf8'),
) as Taken;
const [open] = FIRST.stores.open.records;
const kept = FIRST.stores.kept.records;

/** Lays the database out as it was and puts the records in, and others where they are given. */
async function firstDatabase(more: { readonly open?: unknown[]; readonly kept?: unknown[] } = {}): Promise<void> {
  const request = indexedDB.open('haystack', FIRST.version);
  request.onupgradeneeded = () => {
    for (const [name, { keyPath, records }] of Object.entries(FIRST.stores)) {
      const store = request.result.createObjectStore(name, { keyPath });
      for (const record of [...records, ...(more[name as 'open' | 'kept'] ?? [])]) store.put(record);
    }
  };
  (await asked(request)).close();
}

beforeEach(emptyMachine);

describe('a database of the first layout', () => {
  it('is of version 1 and has the shelves of then', async () => {
    await firstDatabase();
    const base = await rawDatabase();
    expect(base.version).toBe(1);
    expect([...base.objectStoreNames]).toEqual(['kept', 'open']);
    base.close();
  });

  it('gives its signed runs with everything that their files say, in the order of keeping', async () => {
    await firstDatabase();
    const { logbook } = await openTab();
    expect(logbook.trouble()).toBeNull();
    expect(logbook.asides()).toEqual([]);
    expect(logbook.keptRuns()).toMatchObject([
      { scenarioId: 'can-examined', track: 'first-sweep', sealed: true, total: 94, passed: true, serial: 1 },
      { scenarioId: 'first-curve', track: 'first-sweep', sealed: false, total: 96, passed: true, serial: 2 },
    ]);
    for (const [i, run] of logbook.keptRuns().entries()) {
      const before = [...kept].sort((a, b) => Number(a.serial) - Number(b.serial))[i]!;
      expect(run).toMatchObject({ runId: before.runId, learner: null, signedAtMs: null });
      expect(await logbook.readText(run.runId)).toBe(before.text);
      const file = readRunFile(before.text as string, 'kept.json');
      expect(file.ok && file.value.claimed?.lines).toEqual(run.lines.map(({ id, points }) => ({ id, points })));
    }
  });

  it('gives the run that lay open, so that the bench stands where it stood', async () => {
    await firstDatabase();
    const { logbook } = await openTab();
    expect(logbook.openRuns()).toMatchObject([{ runId: open!.runId, scenarioId: 'first-curve', turns: open!.turns }]);
    const found = (await logbook.readOpen('first-curve'))!;
    const { id, start } = open!.scenario as { id: string; start: { slugs: object } };
    // The scenario of then in the words of today.
    const scenario = { id, version: 2, recommendedAfter: [], start: { slugs: start.slugs, randomTurns: 0 } };
    expect(found.run).toMatchObject({ ...open, scenario, learner: null });
    expect(found.recorded).toBe(450);
    const setup = { ...setupOf('first-curve'), scenario: found.run.scenario! };
    expect(resumeRun(setup, null, found.run.events).refused).toBeNull();
    expect(createSession(setup).restore(found.run.session)).toBe(true);
  });

  it('is of today’s layout afterwards, with the files apart from the index', async () => {
    await firstDatabase();
    await openTab();
    const base = await rawDatabase();
    expect(base.version).toBe(2);
    base.close();
    expect((await shelf('kept')).map((record) => 'text' in record)).toEqual([false, false]);
    expect((await shelf('texts')).map(({ runId }) => runId).sort()).toEqual(kept.map(({ runId }) => runId).sort());
    // Opened once more, nothing is carried over twice.
    const { logbook } = await openTab();
    expect(logbook.keptRuns()).toHaveLength(2);
    expect(logbook.openRuns()).toHaveLength(1);
  });

  it('gets full marks and causes of its lines when a run is graded anew', async () => {
    await firstDatabase();
    const { logbook } = await openTab();
    const run = logbook.keptRuns()[1]!;
    expect(run.lines.every((line) => line.max === null && line.cause === null)).toBe(true);
    const setup = setupOf('first-curve');
    const file = readRunFile((await logbook.readText(run.runId))!, 'kept.json');
    const lines = linesOf(grade(setup, file.ok ? file.value.events : []));
    await logbook.fillLines(run.runId, lines);
    const again = (await openTab()).logbook.keptRuns()[1]!;
    expect(again).toEqual({ ...run, lines });
    expect(again.lines.every((line) => line.max !== null)).toBe(true);
  });

  it('sets aside what it cannot read, whole, and carries everything else over', async () => {
    const torn = { ...open, scenarioId: 'torn', events: 'none' };
    const other = {
      runId: 'x',
      scenarioId: 'first-curve',
      total: 50,
      passed: false,
      serial: 'last',
      text: '{"format":',
    };
    await firstDatabase({ open: [torn], kept: [other, { runId: 'y', text: 7, wild: new Map([[1, new Date(0)]]) }] });
    const { logbook } = await openTab();
    expect(logbook.keptRuns()).toHaveLength(2);
    expect(logbook.openRuns()).toHaveLength(1);
    const asides = logbook.asides();
    expect(asides.map((one) => one.reason)).toEqual(['unreadable', 'unreadable', 'unreadable']);
    expect(asides.map((one) => one.scenarioId).sort()).toEqual(['first-curve', 'torn', null].sort());
    expect(asides.some((one) => one.text === '{"format":')).toBe(true);
    expect(asides.some((one) => one.scenarioId === 'torn' && JSON.parse(one.text).runId === open!.runId)).toBe(true);
    expect(asides.some((one) => one.text.includes('"map"'))).toBe(true);
  });

  it('that an old page holds open is waited for, and the wait is told', async () => {
    await firstDatabase();
    const oldPage = await rawDatabase();
    const { logbook } = startTab();
    await vi.waitFor(() => expect(logbook.trouble()).toBe('waiting'));
    expect(logbook.isReady()).toBe(false);
    oldPage.close();
    await logbook.ready;
    expect(logbook.trouble()).toBeNull();
    expect(logbook.keptRuns()).toHaveLength(2);
  });

  it('stays as it was where there is no room to carry it over', async () => {
    await firstDatabase();
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('no room', 'QuotaExceededError');
    });
    const { logbook } = await openTab();
    put.mockRestore();
    expect(logbook.trouble()).toBe('full');
    expect((await openTab()).logbook.keptRuns()).toHaveLength(2);
  });

  it('keeps two open runs apart that claim to be the same', async () => {
    await firstDatabase({
      open: [
        { ...open, scenarioId: 'first-curve-2', scenario: { ...(open!.scenario as object), id: 'first-curve-2' } },
      ],
    });
    const { logbook } = await openTab();
    expect(logbook.openRuns()).toHaveLength(1);
    expect(logbook.asides()).toHaveLength(1);
  });
});

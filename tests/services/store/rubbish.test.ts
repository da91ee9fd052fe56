/** What is no record of ours costs itself and nothing else; what cannot be used is set aside whole. Source: the house's own promises. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { emptyMachine, fillDisk, openRun, openTab, scribble, shelf, signedRun } from './storage.ts';

beforeEach(emptyMachine);
afterEach(() => {
  vi.restoreAllMocks();
});

describe('rubbish on the shelves', () => {
  it('costs the open record that it is, and no other', async () => {
    const { logbook } = await openTab();
    await logbook.saveOpen(openRun('r1'));
    await scribble('open', { runId: 'bad', scenarioId: 7 }, { ...openRun('r3'), savedAtMs: 'soon' }, { runId: '' });
    const again = (await openTab()).logbook;
    expect(again.openRuns().map(({ runId }) => runId)).toEqual(['r1']);
    expect(again.asides().map(({ reason }) => reason)).toEqual(['unreadable', 'unreadable', 'unreadable']);
    expect(again.trouble()).toBeNull();
    expect(await shelf('open')).toHaveLength(1);
    // Set aside once, and shown until somebody takes it away.
    const third = (await openTab()).logbook;
    expect(third.asides()).toHaveLength(3);
    await third.dropAside(third.asides()[0]!.id);
    expect((await openTab()).logbook.asides()).toHaveLength(2);
  });

  it('inside an open run is met when the run is read, and the scenario’s other run comes to light', async () => {
    const { logbook } = await openTab();
    await logbook.saveOpen(openRun('r1'));
    const bad = { ...openRun('r2'), scenario: { ...openRun('r2').scenario, seed: 'x' }, savedAtMs: 1e12 };
    await scribble('open', bad);
    const again = (await openTab()).logbook;
    expect((await again.readOpen('first-curve'))!.run.runId).toBe('r1');
    expect(again.asides()).toMatchObject([{ reason: 'unreadable', scenarioId: 'first-curve' }]);
    expect(JSON.parse(again.asides()[0]!.text)).toMatchObject({ runId: 'r2', scenario: { seed: 'x' } });
  });

  it('among the acts of an open run leaves the acts before it, and the record as text', async () => {
    await openTab();
    const run = openRun('r1');
    const events = run.events.with(5, { atMs: 'late' } as never);
    await scribble('open', { ...run, events, savedAtMs: 5 });
    const found = (await (await openTab()).logbook.readOpen('first-curve'))!;
    expect(found.run.events).toEqual(run.events.slice(0, 5));
    expect(found.recorded).toBe(9);
    expect(JSON.parse(found.text!).events[5]).toEqual({ atMs: 'late' });
  });

  it('in the index is made good from the run’s file', async () => {
    const { logbook } = await openTab();
    const { run, text } = signedRun('r1');
    await logbook.keep(run, text);
    await scribble('kept', { runId: 'r1', serial: 'one', total: Number.NaN });
    const again = (await openTab()).logbook;
    expect(again.asides()).toEqual([]);
    expect(again.keptRuns()).toMatchObject([{ runId: 'r1', total: run.total, passed: run.passed, serial: 1 }]);
  });

  it('in index and file both goes aside with what is left of the file', async () => {
    const { logbook } = await openTab();
    await logbook.keep(signedRun('r2').run, signedRun('r2').text);
    await scribble('kept', { runId: 'r1', serial: 4 });
    await scribble('texts', { runId: 'r1', text: '{ "format": "haystack-run", "ver' });
    const again = (await openTab()).logbook;
    expect(again.keptRuns().map(({ runId }) => runId)).toEqual(['r2']);
    expect(again.asides()).toMatchObject([{ reason: 'unreadable', text: '{ "format": "haystack-run", "ver' }]);
    expect(await shelf('texts')).toHaveLength(1);
  });

  it('in the place of a file is no file', async () => {
    await openTab();
    await scribble('texts', { runId: 'r1', text: { not: 'a text' } });
    expect(await (await openTab()).logbook.readText('r1')).toBeNull();
  });
});

describe('setting aside', () => {
  const cutRun = { ...openRun('r1', 9), events: openRun('r1', 5).events };

  it('keeps the record and what can be used of the run', async () => {
    const { logbook } = await openTab();
    await logbook.saveOpen(openRun('r1', 9));
    const what = { reason: 'stopsShort', scenarioId: 'first-curve', text: 'all nine' } as const;
    await logbook.setAside(what, { runId: 'r1', run: openRun('r1', 5) });
    const again = (await openTab()).logbook;
    expect(again.asides()).toMatchObject([what]);
    expect((await again.readOpen('first-curve'))!.run.events).toHaveLength(5);
  });

  it('takes a run off the bench that cannot be used', async () => {
    const { logbook } = await openTab();
    await logbook.saveOpen(openRun('r1', 9));
    await logbook.setAside({ reason: 'doesNotStart', scenarioId: null, text: 'x' }, { runId: 'r1', run: null });
    expect(await logbook.readOpen('first-curve')).toBeNull();
    expect((await openTab()).logbook.asides()).toMatchObject([{ reason: 'doesNotStart', text: 'x' }]);
  });

  it('on a full disk goes on in memory, and leaves the record where it is', async () => {
    const { logbook } = await openTab();
    await logbook.saveOpen(openRun('r1', 9));
    const disk = fillDisk();
    await logbook.setAside({ reason: 'stopsShort', scenarioId: null, text: 'x' }, { runId: 'r1', run: cutRun });
    expect(logbook.asides()).toHaveLength(1);
    expect((await logbook.readOpen('first-curve'))!.run.events).toHaveLength(5);
    disk.free();
    expect((await (await openTab()).logbook.readOpen('first-curve'))!.run.events).toHaveLength(9);
  });
});

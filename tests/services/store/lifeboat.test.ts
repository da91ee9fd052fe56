/** The last state of each run, left while its page goes away: how it is kept, checked, taken up and cleared. Source: the house's own promises. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createLifeboat } from '../../../src/services/store/lifeboat.ts';
import { emptyMachine, type Held, localStorageOf, openRun, openTab, scribble, shelf, signedRun } from './storage.ts';

beforeEach(emptyMachine);
afterEach(() => {
  vi.restoreAllMocks();
});

const blocked = (): never => {
  throw new Error('blocked');
};
const KEY = 'haystack-lifeboat';
const left = (...runs: readonly ReturnType<typeof openRun>[]): Held =>
  Object.fromEntries(runs.map((run) => [`${KEY}-${run.runId}`, JSON.stringify({ ...run, savedAtMs: 5 })]));

describe('the lifeboat', () => {
  it('holds a copy of each run by itself, until that one is cleared, and gives nothing to another name', () => {
    const held: Held = { other: 'stays' };
    const boat = createLifeboat('a', () => localStorageOf(held));
    expect(boat.find()).toEqual([]);
    expect(boat.put(openRun('r1'), 7)).toBe(true);
    expect(boat.put(openRun('r2'), 8)).toBe(true);
    expect(boat.put(openRun('r2', 4), 9)).toBe(true);
    const found = createLifeboat('a', () => localStorageOf(held)).find();
    expect(found.map(({ text }) => JSON.parse(text))).toEqual([
      { ...openRun('r1'), savedAtMs: 7 },
      { ...openRun('r2', 4), savedAtMs: 9 },
    ]);
    expect(createLifeboat('b', () => localStorageOf(held)).find()).toEqual([]);
    boat.clear(boat.keyOf('r1'), 'what stood there before');
    expect(boat.find()).toHaveLength(2);
    boat.clear(boat.keyOf('r1'), found[0]!.text);
    expect(boat.find().map(({ key }) => key)).toEqual([boat.keyOf('r2')]);
    boat.clear(boat.keyOf('r2'));
    expect(held).toEqual({ other: 'stays' });
  });

  it('without storage or without room stays calm', () => {
    const none = createLifeboat('a', blocked);
    expect(none.put(openRun('r1'), 1)).toBe(false);
    expect(none.find()).toEqual([]);
    expect(() => none.clear('a')).not.toThrow();
    const full = createLifeboat('a', () => ({ ...localStorageOf({}), setItem: blocked }));
    expect(full.put(openRun('r1'), 1)).toBe(false);
  });
});

describe('a page that goes away', () => {
  it('leaves its last state at once, and clears it when the database has it', async () => {
    const { logbook, held } = await openTab();
    logbook.saveLast(openRun('r1'));
    expect(JSON.parse(held[`${KEY}-r1`]!)).toMatchObject(openRun('r1'));
    await vi.waitFor(() => expect(held).toEqual({}));
    expect(await shelf('open')).toMatchObject([{ runId: 'r1' }]);
  });

  it('leaves it there where the database does not take it', async () => {
    const { logbook, held } = await openTab();
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(blocked);
    logbook.saveLast(openRun('r1'));
    await vi.waitFor(() => expect(logbook.trouble()).toBe('failing'));
    expect(Object.keys(held)).toEqual([`${KEY}-r1`]);
  });
});

describe('the next page', () => {
  it('takes up what has more than the database, and clears the boat', async () => {
    await (await openTab()).logbook.saveOpen(openRun('r1', 4));
    const held = left(openRun('r1', 9));
    const { logbook } = await openTab(held);
    expect((await logbook.readOpen('first-curve'))!.run).toEqual(openRun('r1', 9));
    expect(held).toEqual({});
  });

  it('leaves the database as it is where that has more', async () => {
    await (await openTab()).logbook.saveOpen(openRun('r1', 9));
    const held = left(openRun('r1', 4));
    const { logbook } = await openTab(held);
    expect((await logbook.readOpen('first-curve'))!.run).toEqual(openRun('r1', 9));
    expect(held).toEqual({});
  });

  it('never puts a copy in the place of another run, open or signed', async () => {
    const before = (await openTab()).logbook;
    await before.saveOpen(openRun('r1', 9));
    await before.keep(signedRun('r2').run, 'the file');
    const held = left(openRun('r2', 9), openRun('r3', 4));
    const { logbook } = await openTab(held);
    expect((await shelf('open')).map(({ runId }) => runId)).toEqual(['r1', 'r3']);
    expect(logbook.keptRuns().map(({ runId }) => runId)).toEqual(['r2']);
    expect(await logbook.readText('r2')).toBe('the file');
    expect(held).toEqual({});
  });

  it('takes up a copy of before there were learners, under the one name of then', async () => {
    const { learner: _, ...run } = openRun('r1');
    const held: Held = { [KEY]: JSON.stringify(run) };
    const { logbook } = await openTab(held);
    expect((await logbook.readOpen('first-curve'))!.run).toEqual(openRun('r1'));
    expect(held).toEqual({});
  });

  it.each([
    ['torn off', '{"runId":"r1","scen'],
    ['no run', '[7]'],
    ['a key twice', '{"runId":"r1","runId":"r2"}'],
    ['a scenario that breaks its rules', JSON.stringify({ ...openRun('r1'), scenario: { id: 'first-curve' } })],
  ])('sets aside a copy that is %s', async (_, text) => {
    const held: Held = { [`${KEY}-r1`]: text, ...left(openRun('r2')) };
    const { logbook } = await openTab(held);
    expect(logbook.openRuns().map(({ runId }) => runId)).toEqual(['r2']);
    expect(logbook.asides()).toMatchObject([{ reason: 'unreadable', text }]);
    expect(held).toEqual({});
  });

  it('takes up a copy as far as it can be read, and sets the whole aside', async () => {
    const run = openRun('r1');
    const text = JSON.stringify({ ...run, events: run.events.with(6, 'x' as never) });
    const { logbook } = await openTab({ [`${KEY}-r1`]: text });
    expect((await logbook.readOpen('first-curve'))!.run.events).toEqual(run.events.slice(0, 6));
    expect(logbook.asides()).toMatchObject([{ reason: 'stopsShort', text, scenarioId: 'first-curve' }]);
  });

  it('sets the record aside that stands in the way and cannot be read', async () => {
    await openTab();
    await scribble('open', { ...openRun('r1'), scenario: 'none', savedAtMs: 3 });
    const { logbook } = await openTab(left(openRun('r1')));
    expect((await logbook.readOpen('first-curve'))!.run).toEqual(openRun('r1'));
    expect(logbook.asides()).toMatchObject([{ reason: 'unreadable' }]);
  });

  it('goes on with a copy that the database does not take, and leaves it in the boat', async () => {
    await openTab();
    const held = { ...left(openRun('r1')), [`${KEY}-r2`]: 'rubbish' };
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(blocked);
    const { logbook } = await openTab(held);
    expect((await logbook.readOpen('first-curve'))!.run).toEqual(openRun('r1'));
    expect(logbook.asides()).toMatchObject([{ text: 'rubbish' }]);
    expect(Object.keys(held)).toEqual([`${KEY}-r1`, `${KEY}-r2`]);
  });
});

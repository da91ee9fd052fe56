/** The library: what is listed, what is read when it is asked for, and what is left out. */

import { describe, expect, it, vi } from 'vitest';
import { makeCourseIndex } from '../../scripts/makeCourseIndex.ts';
import { bad, good } from '../../src/base/result.ts';
import { benchSetup } from '../../src/certify/benchSetup.ts';
import { loadScenarioFolder } from '../../src/files/library.ts';
import { entryOf } from '../../src/present/entryOf.ts';
import type { ScenarioEntry } from '../../src/present/scenarioEntry.ts';
import { toldPar } from '../../src/scenario/par.ts';
import { createEndlessLibrary } from '../../src/services/library/endlessLibrary.ts';
import { joinLibraries, type Library } from '../../src/services/library/library.ts';
import { readEntries } from '../../src/services/library/readEntries.ts';
import { readShippedFolder } from '../../src/services/library/shippedFolder.ts';
import { SHIPPED_INDEX } from '../../src/services/library/shippedIndex.ts';
import { createShippedLibrary } from '../../src/services/library/shippedLibrary.ts';
import { SCENARIOS, shippedLibrary, shippedTexts } from '../files/shipped.ts';
import { setupOf } from '../technician/oneScenario.ts';

const folder = shippedLibrary();
const shipped = createShippedLibrary();
const ids = folder.scenarios.map((scenario) => scenario.id);

describe('the index of the shipped scenarios', () => {
  it('is made from the scenarios folder, in the order of the course', () => {
    expect(SHIPPED_INDEX).toEqual(
      JSON.parse(JSON.stringify((makeCourseIndex(SCENARIOS) as { entries: unknown }).entries)),
    );
    expect(shipped.entries().map((entry) => entry.id)).toEqual(ids);
    expect(shipped.leftOut()).toEqual([]);
  });

  it('says of each what its file and its receiver say', () => {
    for (const scenario of folder.scenarios) {
      const entry = shipped.entries().find(({ id }) => id === scenario.id)!;
      const { code, title, track, order, difficulty, recommendedAfter, sealed, par, seed, receiver, words } = scenario;
      expect(entry).toMatchObject({
        code,
        title,
        track,
        order,
        difficulty,
        recommendedAfter,
        sealed,
        par: toldPar({ sealed, par }),
        seed,
        receiver,
      });
      expect(entry.brief).toBe(words.brief);
      expect(entry.receiverName).toBe(folder.receivers.get(receiver)!.receiver.setName);
    }
  });

  it('draws a set with a failed part as it is found, not as its slugs alone would leave it', () => {
    const setup = setupOf('one-hump-gone');
    expect(setup.scenario.faults.length).toBeGreaterThan(0);
    const healthy = { ...setup, scenario: { ...setup.scenario, faults: [] } };
    expect(entryOf(setup).curve.found).not.toBe(entryOf(healthy).curve.found);
    expect(shipped.entries().find(({ id }) => id === 'one-hump-gone')).toEqual(entryOf(setup));
  });
});

describe('entries that cannot be read', () => {
  const [first, second, third] = shipped.entries() as unknown as [ScenarioEntry, ScenarioEntry, ScenarioEntry];

  it.each<[string, unknown, string]>([
    ['that is no entry', null, '2'],
    ['without a name', { ...second, id: '', code: '' }, '2'],
    ['with a difficulty that no card can say', { ...second, difficulty: 4 }, second.code],
    ['without a par', { ...second, par: undefined }, second.code],
    ['whose par is no figure', { ...second, par: { turns: null, seconds: 60 } }, second.code],
    ['whose curve is no drawing', { ...second, curve: { ...second.curve, found: 'M0 0"/><script>' } }, second.code],
    ['that comes after something else than names', { ...second, recommendedAfter: [1] }, second.code],
    ['of an id that is taken', { ...second, id: first.id }, second.code],
    ['whose code is gone', { ...second, code: 3 }, second.id],
  ])('one %s costs its own card alone', (_, broken, name) => {
    const { entries, leftOut } = readEntries([first, broken, third]);
    expect(entries).toEqual([first, third]);
    expect(leftOut).toEqual([name]);
  });

  it('an index that is no list has no cards', () => {
    expect(readEntries({})).toEqual({ entries: [], leftOut: [] });
  });
});

describe('the shipped library', () => {
  const ofEach = [...folder.receivers.keys()].map((id) => folder.scenarios.find((one) => one.receiver === id)!);
  it.each(ofEach.map((one) => [one.receiver, one] as const))(
    'reads a scenario of %s with its set, as the whole folder has them',
    async (_, scenario) => {
      const setup = await shipped.setup(scenario.id);
      expect(setup).toEqual(good(setupOf(scenario.id)));
      expect(setup?.ok).toBe(true);
    },
  );

  it('knows no other', async () => {
    expect(await shipped.setup('no-such-scenario')).toBeNull();
  });

  it('reads a receiver by itself', async () => {
    for (const [id, loaded] of folder.receivers) expect(await shipped.receiver(id)).toEqual(good(loaded));
    expect(await shipped.receiver('no-such-set')).toBeNull();
  });

  it('is read as a whole where all of it is wanted', async () => {
    const whole = await readShippedFolder();
    // Without the pars, which their certificates have.
    const read = loadScenarioFolder(shippedTexts());
    expect(whole.scenarios).toEqual(read.ok && read.value.scenarios);
    expect(whole.receivers).toEqual(folder.receivers);
  });
});

describe('the endless library', () => {
  const made = { ...setupOf('first-curve').scenario, id: 'endless-1-gale' };

  it('makes what its ids name, and knows no other', async () => {
    const make = vi.fn(async () => made);
    const deal = vi.fn();
    const endless = createEndlessLibrary(make, shipped, deal);
    const { signal } = new AbortController();
    const setup = await endless.setup(made.id, { signal });
    expect(setup).toEqual(benchSetup(folder.receivers.get(made.receiver)!, made));
    expect(make).toHaveBeenCalledWith(made.id, { signal });
    expect(await endless.setup('first-curve')).toBeNull();
    expect(make).toHaveBeenCalledTimes(1);
    expect(endless.entries()).toEqual([]);
    // A practice job is the same each time.
    await endless.setup(made.id, { attempt: 7 });
    expect(deal).not.toHaveBeenCalled();
  });

  it('has each attempt at a sealed one dealt, and the name itself where the number makes none', async () => {
    const sealed = { ...made, id: 'endless-3-gale', sealed: true };
    const design = folder.receivers.get(made.receiver)!;
    const dealt = benchSetup(design, { ...sealed, attempt: 7 });
    const deal = vi.fn(async ({ attempt }: { attempt: number }) =>
      attempt === 7 ? dealt : bad({ file: '', place: '', found: ['nothing'], wanted: ['anotherNumber'] }),
    );
    const endless = createEndlessLibrary(async () => sealed, shipped, deal);
    expect(await endless.setup(sealed.id, { attempt: 7 })).toBe(dealt);
    expect(deal.mock.calls[0]![0]).toMatchObject({ scenario: sealed, attempt: 7 });
    expect(await endless.setup(sealed.id, { attempt: 8 })).toEqual(benchSetup(design, sealed));
    expect(await endless.setup(sealed.id)).toEqual(benchSetup(design, sealed));
  });

  it('says when nothing can be made of an id', async () => {
    const endless = createEndlessLibrary(async () => null, shipped, vi.fn());
    expect((await endless.setup(made.id))?.ok).toBe(false);
  });
});

describe('libraries joined', () => {
  it('list one after the other, ask the first that knows, and tell of every change', async () => {
    const told: (() => void)[] = [];
    const own: Library = {
      entries: () => shipped.entries().slice(0, 1),
      leftOut: () => ['mine'],
      setup: async (id) => (id === 'mine' ? good(setupOf('first-curve')) : null),
      receiver: async () => null,
      knownSet: async () => null,
      subscribe(listener) {
        told.push(listener);
        return () => void told.pop();
      },
    };
    const all = joinLibraries(shipped, own);
    expect(all.entries()).toHaveLength(ids.length + 1);
    expect(all.leftOut()).toEqual(['mine']);
    expect(await all.setup('mine')).toEqual(good(setupOf('first-curve')));
    expect((await all.setup('zero'))?.ok).toBe(true);
    expect(await all.setup('neither')).toBeNull();
    const heard = vi.fn();
    const stop = all.subscribe(heard);
    told[0]!();
    expect(heard).toHaveBeenCalledTimes(1);
    stop();
    expect(told).toEqual([]);
  });
});

/** Scenarios of one's own: what is taken from a file and what is refused, how they are kept, played and judged. Source: the house's own promises. */
import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, describe, expect, it } from 'vitest';
import { benchSetup } from '../../src/certify/benchSetup.ts';
import { loadScenario } from '../../src/files/library.ts';
import { claimOf, grade } from '../../src/grading/grade.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { doJob, type JobWorld } from '../../src/services/jobs/doJob.ts';
import { createOwnLibrary } from '../../src/services/library/ownLibrary.ts';
import { readHanded, toShelf } from '../../src/services/library/ownReading.ts';
import { openOwnDatabase, ownOf } from '../../src/services/store/ownDatabase.ts';
import type { OwnScenario } from '../../src/services/store/ownScenario.ts';
import { openOwnShelf } from '../../src/services/store/ownShelf.ts';
import { saidOf } from '../files/said.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { runOf } from '../run/runs.ts';
import { wholeJob } from '../session/acts.ts';
import { tabs } from './store/storage.ts';

const course = shippedLibrary();
const receivers = {
  entries: () => [],
  receiver: async (id: string) => ({ ok: true as const, value: course.receivers.get(id)! }),
};
const around = {
  library: {
    receiver: async (id: string) => {
      const found = course.receivers.get(id);
      return found === undefined ? null : { ok: true as const, value: found };
    },
  },
  receiverIds: [...course.receivers.keys()],
  courseIds: new Set(course.scenarios.map(({ id }) => id)),
};
const plain = JSON.parse(readFileSync('scenarios/first-sweep/first-curve.json', 'utf8')) as Record<string, unknown>;
const textWith = (changes: Record<string, unknown>): string =>
  JSON.stringify({ ...plain, id: 'slip-evening', title: 'On the slip', ...changes }, null, 1);

async function shelved(changes: Record<string, unknown> = {}, addedAtMs = 1): Promise<OwnScenario> {
  const text = textWith(changes);
  const read = await readHanded(text, 'slip.json', around);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const own = await toShelf(read.value, text, addedAtMs);
  if (!own.ok) throw new Error(JSON.stringify(own.problems));
  return own.value;
}

const openShelf = async (channel: Parameters<typeof openOwnShelf>[0]['channel'] = null) => {
  const shelf = openOwnShelf({ name: 'haystack-own', channel });
  await shelf.ready;
  return shelf;
};

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

describe('a scenario from a file', () => {
  it('is taken where it is whole and fits a receiver', async () => {
    const own = await shelved();
    expect(own).toMatchObject({ id: 'slip-evening', certificate: null, entry: { title: 'On the slip' } });
    expect(own.entry.curve.found).toMatch(/^M/);
  });

  it.each<[string, Record<string, unknown>, string, RegExp]>([
    ['an id of the course', { id: 'both-ways' }, '/id', /course/],
    ['an id of the endless track', { id: 'endless-2-gale' }, '/id', /course/],
    ['a receiver that is not here', { receiver: 'nobodys-set' }, '/receiver', /nobodys-set/],
    ['a slug that the receiver has not', { start: { slugs: { Q9: 1 } } }, '/start/slugs/Q9', /Q9/],
    ['an attempt that somebody dealt', { attempt: 3 }, '/attempt', /3/],
    ['a key of its own', { onload: 'alert(1)' }, '/onload', /onload/],
  ])('is refused for %s, with its place', async (_, changes, place, found) => {
    const said = saidOf(await readHanded(textWith(changes), 'slip.json', around));
    const one = said.find((problem) => problem.place.endsWith(place))!;
    expect(one.place).toMatch(/^line \d+, column \d+/);
    expect(`${one.found} ${one.wanted}`).toMatch(found);
  });

  it('is refused with all of its reasons, not the first', async () => {
    const said = saidOf(
      await readHanded(textWith({ id: 'both-ways', order: 0, receiver: 'nobodys-set' }), 'a', around),
    );
    expect(said.map(({ place }) => place.replace(/^.*, /, '')).sort()).toEqual(['/id', '/order', '/receiver']);
  });

  it('is refused where it is no JSON, a run, or far too large', async () => {
    expect(saidOf(await readHanded('{', 'a', around))[0]!.found).toMatch(/end of the text/);
    expect(saidOf(await readHanded('{"format":"haystack-run","version":2}', 'a', around))[0]!.found).toMatch(/run/);
    expect(saidOf(await readHanded(' '.repeat(2_000_000), 'a', around))[0]!.found).toMatch(/characters/);
  });
});

describe('the shelf', () => {
  it('keeps what was put on it, and lets go of it', async () => {
    const one = await shelved();
    const shelf = await openShelf();
    expect(await shelf.put(one)).toBe(true);
    expect((await openShelf()).all()).toEqual([one]);
    expect(await shelf.remove(one.id)).toEqual([one]);
    expect((await openShelf()).all()).toEqual([]);
  });

  it('lists the last version of a name, and keeps the earlier ones for their runs', async () => {
    const first = await shelved();
    const second = await shelved({ title: 'On the slip again' }, 2);
    const shelf = await openShelf();
    await shelf.put(first);
    await shelf.put(second);
    expect((await openShelf()).all()).toEqual([second]);
    expect((await ownOf('slip-evening')).map(({ hash }) => hash).sort()).toEqual([first.hash, second.hash].sort());
    expect(await shelf.remove('slip-evening')).toHaveLength(2);
    expect(await ownOf('slip-evening')).toEqual([]);
  });

  it('does not show what is no record of ours', async () => {
    const one = await shelved();
    const base = await openOwnDatabase('haystack-own');
    await base.put({ ...one, entry: { ...one.entry, curve: { ...one.entry.curve, found: '"/><script>' } } });
    await base.put({ ...one, hash: 'f'.repeat(64), addedAtMs: Number.NaN });
    base.close();
    expect((await openShelf()).all()).toEqual([]);
  });

  it('goes on in memory where there is no database, and says so', async () => {
    globalThis.indexedDB = undefined as never;
    const one = await shelved();
    const shelf = await openShelf();
    expect(await shelf.put(one)).toBe(false);
    expect(shelf.isStored()).toBe(false);
    expect(shelf.all()).toEqual([one]);
  });

  it('is the same in every tab', async () => {
    const channel = tabs();
    const [here, there] = [await openShelf(channel()), await openShelf(channel())];
    const heard = new Promise<void>((resolve) => there.subscribe(resolve));
    await here.put(await shelved());
    await heard;
    expect(there.all()).toHaveLength(1);
  });
});

describe('the library of one’s own', () => {
  it('puts it on the bench with the par of its certificate, and lists it as one’s own', async () => {
    const shelf = await openShelf();
    const library = createOwnLibrary(shelf, receivers);
    expect(await library.setup('slip-evening')).toBeNull();
    const one = await shelved();
    await shelf.put(one);
    expect(library.entries()).toMatchObject([{ id: 'slip-evening', own: 'notTried', uncertified: true }]);
    const par = { turns: 3, seconds: 400 };
    await shelf.put({ ...one, certificate: { kind: 'certified', engine: '1', par } });
    expect(library.entries()).toMatchObject([{ own: 'certified', par }]);
    expect(library.entries()[0]).not.toHaveProperty('uncertified');
    const setup = await library.setup('slip-evening');
    expect(setup?.ok && setup.value.scenario).toMatchObject({ id: 'slip-evening', title: 'On the slip', par });
  });

  it('does not take the file’s word for a par', async () => {
    const shelf = await openShelf();
    await shelf.put(await shelved({ par: { turns: 2, seconds: 60 } }));
    expect(createOwnLibrary(shelf, receivers).entries()[0]!.uncertified).toBe(true);
  });
});

describe('a run on one’s own scenario', () => {
  const runText = (changes: Record<string, unknown>): string => {
    const loaded = loadScenario({ file: 'a', text: textWith(changes) }, course.receivers);
    if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
    const setup = benchSetup(course.receivers.get(loaded.value.receiver)!, loaded.value);
    if (!setup.ok) throw new Error(JSON.stringify(setup.problems));
    const run = runOf(setup.value, wholeJob(setup.value));
    return serialiseRunFile(toRunFile(run, claimOf(grade(setup.value, run.events))));
  };
  const judged = async (text: string, versions: readonly OwnScenario[]) => {
    const world: JobWorld = {
      library: async () => course,
      knownSet: async () => null,
      par: async () => null,
      own: async (id) => versions.filter((one) => one.id === id).map(({ text: own }) => ({ text: own, par: null })),
    };
    return (await doJob('judge', { text, file: 'run.json' }, world)).outcome;
  };

  it('is verified against the version that it was done on, found by its hash', async () => {
    const [first, second] = [await shelved(), await shelved({ toleranceFactor: 2 }, 2)];
    expect(await judged(runText({}), [first, second])).toBe('verified');
    expect(await judged(runText({ toleranceFactor: 2 }), [first, second])).toBe('verified');
  });

  it('is of another scenario where no version is that of the run, or none is here', async () => {
    expect(await judged(runText({ toleranceFactor: 3 }), [await shelved()])).toBe('otherScenario');
    expect(await judged(runText({}), [])).toBe('otherScenario');
  });
});

/** A sheet that brings a receiver of its own: taken in, played on that very receiver, handed on, and judged against it. Source: docs/evening-sheet.md. */
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, describe, expect, it } from 'vitest';
import { fileOf } from '../../src/app/workshop/eveningFile.ts';
import type { ReceiverPair } from '../../src/files/readReceiverPair.ts';
import { claimOf, grade } from '../../src/grading/grade.ts';
import { receiverHash, serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { doJob } from '../../src/services/jobs/doJob.ts';
import { setupOfOpen, setupWith } from '../../src/services/library/library.ts';
import { ownOf } from '../../src/services/store/ownDatabase.ts';
import { createOwnReceivers } from '../../src/services/store/ownReceivers.ts';
import { en } from '../../src/words/en/index.ts';
import { saidOf } from '../files/said.ts';
import { runOf } from '../run/runs.ts';
import { wholeJob } from '../session/acts.ts';
import { browser, course, designOf, other, pair, sheetOn } from './harbourCan.ts';

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

describe('a sheet with a receiver of its own', () => {
  it('is played on that receiver, and its card says so', async () => {
    const { library, take } = await browser();
    const taken = await take(sheetOn(pair('harbour-can')));
    expect(taken.ok).toBe(true);
    const entry = library.entries().find(({ id }) => id === 'slip-evening')!;
    expect(entry).toMatchObject({ ownReceiver: true, receiverName: 'Harbour can', own: 'notTried' });
    const setup = await library.setup('slip-evening');
    expect(setup?.ok && receiverHash(setup.value)).toBe(receiverHash(designOf(pair('harbour-can'))));
  });

  it('never takes the place of a receiver that was made here under the same name, nor the other way round', async () => {
    expect(other(pair('a').deck.text)).not.toBe(pair('a').deck.text);
    const [made, brought] = [designOf(pair('harbour-can', other)), designOf(pair('harbour-can'))].map(receiverHash);
    const { own, library, take } = await browser();
    await own.keep(pair('harbour-can', other));
    await take(sheetOn(pair('harbour-can')));
    const [byName, onSheet] = [await own.read('harbour-can'), await library.setup('slip-evening')];
    expect(byName?.ok && receiverHash(byName.value)).toBe(made);
    expect(onSheet?.ok && receiverHash(onSheet.value)).toBe(brought);
    // A run finds the receiver that it was done on, whichever is here under the name; and so does one that lies open.
    const scenario = onSheet?.ok ? onSheet.value.scenario : null;
    expect(receiverHash((await setupWith(library, scenario!, brought))!)).toBe(brought);
    expect(receiverHash((await setupWith(library, scenario!, made))!)).toBe(made);
    expect(receiverHash((await setupOfOpen(library, scenario!))!)).toBe(brought);
  });

  it('is refused where it changes a receiver of the course, and is then not taken in part', async () => {
    const { shelf, take, own } = await browser();
    const refused = await take(sheetOn(pair('loose-can-10m7', other)));
    expect(saidOf(refused).map(({ place, found }) => `${place} ${found}`)).toEqual([
      expect.stringMatching(/\/receivers\/0\/receiver\/id .*loose-can-10m7/),
    ]);
    expect(shelf.all()).toEqual([]);
    expect(await own.textsOf('loose-can-10m7')).toBe(null);
  });

  it('lasts as long as the page where the browser has no database', async () => {
    globalThis.indexedDB = {
      open() {
        throw new Error('no database');
      },
    } as never;
    const blind = createOwnReceivers({ name: 'haystack-receivers', now: () => 7 });
    expect((await blind.bring(pair('harbour-can'))).ok).toBe(true);
    const read = await blind.read('harbour-can');
    expect(read?.ok && receiverHash(read.value)).toBe(receiverHash(designOf(pair('harbour-can'))));
  });

  it('is written with the receiver in it, and whoever opens the file needs nothing else', async () => {
    const first = await browser();
    await first.take(sheetOn(pair('harbour-can')));
    const draft = {
      title: 'Again',
      author: '',
      minutes: 60,
      order: 'any' as const,
      scenarios: ['slip-evening'],
      minutesEach: {},
      passMark: null,
      exam: null,
    };
    const text = await fileOf(en, first.library, draft, null, async () => first.own);
    expect(typeof text).toBe('string');
    const second = await browser();
    expect(await second.library.setup('slip-evening')).toBe(null);
    expect((await second.take(text as string)).ok).toBe(true);
    const setup = await second.library.setup('slip-evening');
    expect(setup?.ok && receiverHash(setup.value)).toBe(receiverHash(designOf(pair('harbour-can'))));
  });
});

describe('a run on it', () => {
  async function judged(onShelf: ReceiverPair, done: ReceiverPair) {
    const runner = await browser();
    await runner.take(sheetOn(done));
    const setup = await runner.library.setup('slip-evening');
    if (!setup?.ok) throw new Error('no bench');
    const run = runOf(setup.value, wholeJob(setup.value));
    const text = serialiseRunFile(toRunFile(run, claimOf(grade(setup.value, run.events))));
    const instructor = await browser();
    await instructor.take(sheetOn(onShelf));
    return doJob(
      'judge',
      { text, file: 'run.json' },
      {
        library: async () => course,
        knownSet: async () => null,
        par: async () => null,
        own: async (id) =>
          (await ownOf(id)).map(({ text: own, receiverHash: hash }) => ({ text: own, par: null, receiverHash: hash })),
        ownReceiver: async (id, hash) => {
          const read = await instructor.own.read(id, hash);
          return read?.ok ? read.value : null;
        },
      },
    );
  }

  it('is verified by whoever has the sheet', async () => {
    expect(await judged(pair('harbour-can'), pair('harbour-can'))).toMatchObject({ outcome: 'verified' });
  });

  it('on another receiver of that name is told as done on another', async () => {
    expect(await judged(pair('harbour-can'), pair('harbour-can', other))).toMatchObject({
      outcome: 'otherScenario',
      finding: { kind: 'foreign', part: 'receiver' },
    });
  });
});

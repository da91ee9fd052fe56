/** The shelf of own scenarios has each certified on the design that it was read with, also where that is a receiver of the user's own. Source: the house's own promises. */
import { readFileSync } from 'node:fs';
import { IDBFactory } from 'fake-indexeddb';
import { expect, it } from 'vitest';
import { certifyShelf, forgetStale, takeText } from '../../src/app/takeFiles.ts';
import { readReceiverPair } from '../../src/files/readReceiverPair.ts';
import { parIsKnown } from '../../src/scenario/par.ts';
import { doJob } from '../../src/services/jobs/doJob.ts';
import { JobFailed, type Jobs } from '../../src/services/jobs/jobPool.ts';
import { ownSetup, readHanded, toShelf } from '../../src/services/library/ownReading.ts';
import type { OwnScenario } from '../../src/services/store/ownScenario.ts';
import { openOwnShelf } from '../../src/services/store/ownShelf.ts';

const FOLDER = 'scenarios/receivers/loose-can-10m7';
const lesson = readFileSync('scenarios/first-sweep/first-curve.json', 'utf8');
const text = JSON.stringify({ ...JSON.parse(lesson), id: 'slip-evening', receiver: 'slip-can' });

/** The bench's own can under a name that no worker knows. */
function ownReceiver() {
  const receiver = { ...JSON.parse(readFileSync(`${FOLDER}/receiver.json`, 'utf8')), id: 'slip-can' };
  const read = readReceiverPair({
    deck: { file: 'network.cir', text: readFileSync(`${FOLDER}/network.cir`, 'utf8') },
    receiver: { file: 'receiver.json', text: JSON.stringify(receiver) },
  });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read;
}

const library = {
  entries: () => [],
  receiver: async (id: string) => (id === 'slip-can' ? ownReceiver() : null),
};

/** A worker that knows no receiver but what its order brings. */
const jobs: Pick<Jobs, 'run'> = {
  run: (name, order) => {
    const world = {
      library: async () => ({ receivers: new Map(), scenarios: [], leftOut: [] }) as never,
      knownSet: async () => null,
      par: async () => null,
    };
    return doJob(name, structuredClone(order), world).catch((error: unknown) => {
      throw new JobFailed('threw', String(error));
    });
  },
};

function handed<T>(read: { readonly ok: true; readonly value: T } | { readonly ok: false }): T {
  if (!read.ok) throw new Error('not read');
  return read.value;
}

async function shelfWithOne() {
  const around = { library, receiverIds: [], courseIds: new Set<string>() };
  const read = await readHanded(text, 'slip.json', around);
  const own = read.ok ? await toShelf(read.value, text, 1) : read;
  if (!own.ok) throw new Error(JSON.stringify(own.problems));
  let records: readonly OwnScenario[] = [own.value];
  return {
    all: () => records,
    put: async (one: OwnScenario) => {
      records = records.map((before) => (before.hash === one.hash ? one : before));
      return true;
    },
  };
}

it('certifies a scenario on a receiver of the user’s own', async () => {
  const shelf = await shelfWithOne();
  expect(shelf.all()[0]!.certificate).toBeNull();
  await certifyShelf(library, shelf, jobs);
  const { certificate } = shelf.all()[0]!;
  expect(certificate).toMatchObject({ kind: 'certified', par: { turns: expect.any(Number) } });
});

it('leaves one untried where the work breaks down, and tries it at the next visit', async () => {
  const shelf = await shelfWithOne();
  const broken: Pick<Jobs, 'run'> = { run: () => Promise.reject(new JobFailed('noWorker')) };
  await certifyShelf(library, shelf, broken);
  expect(shelf.all()[0]!.certificate).toBeNull();
  await certifyShelf(library, shelf, jobs);
  expect(shelf.all()[0]!.certificate).toMatchObject({ kind: 'certified' });
});

it('takes what the workshop has just certified as certified, and not on another receiver of that name', async () => {
  const design = ownReceiver().value;
  const on = { ...library, setup: async () => null, leftOut: () => [], subscribe: () => () => {} };
  const { scenario } = handed(await readHanded(text, 'slip.json', { library, receiverIds: [], courseIds: new Set() }));
  const outcome = await jobs.run('certify', { scenario, design });
  const [first, ...rest] = design.receiver.adjusters;
  const stiffer = { ...design.receiver, adjusters: [{ ...first!, backlashTurns: 0.02 }, ...rest] };
  for (const [proved, kind] of [
    [{ outcome, design }, 'certified'],
    [{ outcome: { ok: false, problems: [] }, design }, 'refused'],
    [{ outcome, design: { ...design, receiver: stiffer } }, undefined],
    [null, undefined],
  ] as const) {
    globalThis.indexedDB = new IDBFactory();
    const shelf = openOwnShelf({ name: 'haystack-own', channel: null });
    await shelf.ready;
    const taken = await takeText(on as never, shelf, text, 'slip.json', proved as never);
    expect(taken.ok).toBe(true);
    expect(shelf.all().map(({ certificate }) => certificate?.kind)).toEqual([kind]);
    if (kind !== 'certified') continue;
    const [one] = shelf.all();
    expect(one!.certificate).toMatchObject({ par: outcome.ok ? outcome.certificate.par : null });
    const setup = await ownSetup(one!, library, {});
    expect(setup?.ok && parIsKnown(setup.value.scenario)).toBe(true);
  }
});

it('takes the certificate from a scenario whose receiver has been drawn anew under its old name, and certifies it on the new one', async () => {
  const shelf = await shelfWithOne();
  await certifyShelf(library, shelf, jobs);
  const before = shelf.all()[0]!.certificate!;
  await forgetStale(library, shelf);
  expect(shelf.all()[0]!.certificate).toBe(before);
  // The same can under the same name with a stiffer thread.
  const redrawn = ownReceiver();
  const [first, ...rest] = redrawn.value.receiver.adjusters;
  const receiver = { ...redrawn.value.receiver, adjusters: [{ ...first!, backlashTurns: 0.02 }, ...rest] };
  const other = { ...library, receiver: async () => ({ ok: true, value: { ...redrawn.value, receiver } }) as const };
  await forgetStale(other, shelf);
  expect(shelf.all()[0]!.certificate).toBeNull();
  await certifyShelf(other, shelf, jobs);
  expect(shelf.all()[0]!.certificate).toMatchObject({ kind: 'certified' });
  expect(shelf.all()[0]!.certificate!.receiverHash).not.toBe(before.receiverHash);
});

/** A receiver that is not of the course, a sheet on it, and a browser to open it in. */
import { readFileSync } from 'node:fs';
import { IDBFactory } from 'fake-indexeddb';
import { takeEvening } from '../../src/app/takeEvening.ts';
import { surroundingsOf } from '../../src/app/takeFiles.ts';
import { eveningText } from '../../src/files/evening.ts';
import { loadScenario } from '../../src/files/library.ts';
import { type ReceiverPair, readReceiverPair } from '../../src/files/readReceiverPair.ts';
import { joinLibraries, type Library } from '../../src/services/library/library.ts';
import { createOwnLibrary } from '../../src/services/library/ownLibrary.ts';
import { createReceiverShelfLibrary } from '../../src/services/library/receiverShelfLibrary.ts';
import { createOwnReceivers } from '../../src/services/store/ownReceivers.ts';
import { openOwnShelf } from '../../src/services/store/ownShelf.ts';
import { shippedLibrary } from '../files/shipped.ts';

const FOLDER = 'scenarios/receivers/loose-can-10m7';
export const course = shippedLibrary();
export const lesson = JSON.parse(readFileSync('scenarios/first-sweep/first-curve.json', 'utf8')) as Record<
  string,
  unknown
>;

export function pair(id: string, deck: (text: string) => string = (text) => text): ReceiverPair {
  const receiver = JSON.parse(readFileSync(`${FOLDER}/receiver.json`, 'utf8'));
  return {
    deck: { file: 'network.cir', text: deck(readFileSync(`${FOLDER}/network.cir`, 'utf8')) },
    receiver: { file: `${id}.json`, text: JSON.stringify({ ...receiver, id, setName: 'Harbour can' }) },
  };
}

/** The same can with a little more damping: another circuit under the same name. */
export const other = (text: string): string => text.replace('RQ1 pri 0 20k', 'RQ1 pri 0 21k');

export const designOf = (texts: ReceiverPair) => {
  const read = readReceiverPair(texts);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
};

export function sheetOn(texts: ReceiverPair, id = texts.receiver.file.replace('.json', '')): string {
  const scenario = loadScenario(
    { file: 'a.json', text: JSON.stringify({ ...lesson, id: 'slip-evening', receiver: id }) },
    new Map([[id, designOf(texts)]]),
  );
  if (!scenario.ok) throw new Error(JSON.stringify(scenario.problems));
  const head = { title: 'Third Thursday', order: 'listed' as const, minutes: null, exam: null };
  return eveningText({ ...head, scenarios: [scenario.value] }, [texts]);
}

/** A browser with nothing in it. */
export async function browser() {
  globalThis.indexedDB = new IDBFactory();
  const own = createOwnReceivers({ name: 'haystack-receivers', now: () => 7 });
  const shelf = openOwnShelf({ name: 'haystack-own', channel: null });
  await shelf.ready;
  const shipped: Library = {
    entries: () => course.scenarios.map((one) => ({ id: one.id, receiver: one.receiver })) as never,
    leftOut: () => [],
    setup: async () => null,
    receiver: async (id) => {
      const found = course.receivers.get(id);
      return found === undefined ? null : { ok: true, value: found };
    },
    knownSet: async () => null,
    subscribe: () => () => {},
  };
  const receivers = joinLibraries(
    shipped,
    createReceiverShelfLibrary(async () => own),
  );
  const library = joinLibraries(receivers, createOwnLibrary(shelf, receivers));
  const take = (text: string) =>
    takeEvening(text, 'evening.json', library, shelf, surroundingsOf(library), async () => own);
  return { own, shelf, library, take };
}

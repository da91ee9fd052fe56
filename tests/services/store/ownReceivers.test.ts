/** What the shelf of one's own receivers keeps and gives back, and that scenarios find what stands on it. Source: the house's own promises; IndexedDB as fake-indexeddb has it. */
import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import { openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import type { ReceiverPair } from '../../../src/files/readReceiverPair.ts';
import { joinLibraries } from '../../../src/services/library/library.ts';
import { createReceiverShelfLibrary } from '../../../src/services/library/receiverShelfLibrary.ts';
import { createShippedLibrary } from '../../../src/services/library/shippedLibrary.ts';
import { createOwnReceivers } from '../../../src/services/store/ownReceivers.ts';

const FROM = 'scenarios/receivers/loose-can-10m7';

function pair(id: string, setName: string, change: (text: string) => string = (text) => text): ReceiverPair {
  const receiver = JSON.parse(readFileSync(`${FROM}/receiver.json`, 'utf8'));
  return {
    deck: { file: 'network.cir', text: change(readFileSync(`${FROM}/network.cir`, 'utf8')) },
    receiver: { file: `${id}.json`, text: JSON.stringify({ ...receiver, id, setName }) },
  };
}

let count = 0;
const shelf = (name = `own-${++count}`, now = () => 7) => createOwnReceivers({ name, now });

describe('the shelf', () => {
  it('keeps the two texts, lists them by name, and has them again on the next visit', async () => {
    const first = shelf('own-visits');
    let told = 0;
    first.subscribe(() => told++);
    expect((await first.keep(pair('second-can', 'The second can'))).ok).toBe(true);
    expect((await first.keep(pair('first-can', 'A first can'))).ok).toBe(true);
    expect(told).toBe(2);
    const next = shelf('own-visits');
    expect(await next.list()).toEqual([
      { id: 'first-can', setName: 'A first can', savedAtMs: 7 },
      { id: 'second-can', setName: 'The second can', savedAtMs: 7 },
    ]);
    expect(await next.texts('first-can')).toEqual(pair('first-can', 'A first can'));
    const read = await next.read('first-can');
    expect(read?.ok && read.value.receiver.setName).toBe('A first can');
    await next.keep(pair('first-can', 'B first can'));
    expect((await next.list()).map(({ setName }) => setName)).toEqual(['B first can', 'The second can']);
    await next.drop('first-can');
    expect((await next.list()).map(({ id }) => id)).toEqual(['second-can']);
    expect(await next.read('first-can')).toBe(null);
  });

  it('keeps nothing that does not pass every check', async () => {
    const own = shelf();
    const wrong = await own.keep(pair('a-can', 'A can', (deck) => deck.replace('C1 pri 0 56p', 'C1 pri 0 56m')));
    expect(wrong.ok ? [] : wrong.problems.map(({ found }) => found[0])).toEqual(['namedValue', 'detuned']);
    expect(await own.list()).toEqual([]);
  });

  it('gives back nothing that is no record of a receiver, and lists the rest', async () => {
    const own = shelf('own-rubbish');
    await own.keep(pair('a-can', 'A can'));
    const base = await openDB('own-rubbish');
    await base.put('receivers', { id: 'b-can', setName: 7 });
    await base.put('receivers', { ...(await base.get('receivers', 'a-can')), id: '../c' });
    expect((await own.list()).map(({ id }) => id)).toEqual(['a-can']);
    expect(await own.texts('b-can')).toBe(null);
    await base.put('receivers', { ...(await base.get('receivers', 'a-can')), receiverText: '{' });
    const torn = await own.read('a-can');
    expect(torn?.ok).toBe(false);
  });

  it('lists what sheets have brought apart from what was made here, each once, and throws away the very one', async () => {
    const own = shelf('own-brought');
    let told = 0;
    own.subscribe(() => told++);
    const damped = (deck: string) => deck.replace('RQ1 pri 0 20k', 'RQ1 pri 0 21k');
    await own.keep(pair('a-can', 'Made here'));
    for (const change of [(deck: string) => deck, damped, damped]) await own.bring(pair('a-can', 'Brought', change));
    expect(told).toBe(4);
    const brought = await shelf('own-brought').brought();
    expect(brought.map(({ id, setName }) => [id, setName])).toEqual([
      ['a-can', 'Brought'],
      ['a-can', 'Brought'],
    ]);
    expect(await own.brought()).toHaveLength(2);
    expect(await own.list()).toHaveLength(1);
    const [gone, stays] = brought as [(typeof brought)[number], (typeof brought)[number]];
    const before = await own.textsOf('a-can', gone.hash);
    expect(before).not.toEqual(await own.textsOf('a-can', stays.hash));
    await own.dropBrought(gone.hash);
    expect(told).toBe(5);
    expect((await own.brought()).map(({ hash }) => hash)).toEqual([stays.hash]);
    expect((await shelf('own-brought').brought()).map(({ hash }) => hash)).toEqual([stays.hash]);
    // What asks for the one that is gone gets the one that was made here: no other brought one takes its place.
    expect(await own.textsOf('a-can', gone.hash)).toEqual(pair('a-can', 'Made here'));
  });

  it('is where scenarios find a receiver that does not come with the page; one that does is not hidden by it', async () => {
    const own = shelf();
    await own.keep(pair('a-can', 'A can'));
    await own.keep(pair('loose-can-10m7', 'An impostor'));
    const library = joinLibraries(
      createShippedLibrary([]),
      createReceiverShelfLibrary(async () => own),
    );
    const found = await library.receiver('a-can');
    expect(found?.ok && found.value.receiver.setName).toBe('A can');
    const shipped = await library.receiver('loose-can-10m7');
    expect(shipped?.ok && shipped.value.receiver.setName).toBe('Bollard trainer can');
    expect(await library.receiver('nobody-has-this')).toBe(null);
  });
});

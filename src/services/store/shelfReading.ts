/** Reads the shelves of the database. What is no record of ours is moved aside, and costs nothing else. */
import type { IDBPObjectStore } from 'idb';
import { entryFromText } from './carryOver.ts';
import type { Aside, KeptRun, OpenHead } from './keptRuns.ts';
import { type Base, changeShelves, keptRecord, type OpenRecord, type Shelf, type Shelves } from './layout.ts';
import { asideOf, isObject, type ReadOpen, readAside, readHead, readKept, readOpenRun } from './records.ts';

export interface Index {
  readonly heads: readonly OpenHead[];
  readonly kept: readonly KeptRun[];
  readonly asides: readonly Aside[];
}

/** All that the course wants to know; run files stay where they are. */
export async function readIndex(base: Base, newId: () => string): Promise<Index> {
  const { heads, kept, asides, rubbish } = await lookThrough(base);
  if (rubbish.open.length === 0 && rubbish.kept.length === 0) return { heads, kept, asides };
  // What cannot be put away stays where it is and is met again next time.
  for (const key of rubbish.open) await moveAside(base, key, newId).catch(() => {});
  for (const key of rubbish.kept) await mendKept(base, key, newId).catch(() => {});
  return lookThrough(base);
}

interface ShelfReading extends Index {
  readonly rubbish: { readonly open: readonly string[]; readonly kept: readonly string[] };
}

async function lookThrough(base: Base): Promise<ShelfReading> {
  const look = base.transaction(['open', 'kept', 'aside'], 'readonly');
  const [open, openKeys, kept, keptKeys, aside] = await Promise.all([
    look.objectStore('open').getAll(),
    look.objectStore('open').getAllKeys(),
    look.objectStore('kept').getAll(),
    look.objectStore('kept').getAllKeys(),
    look.objectStore('aside').getAll(),
  ]);
  await look.done;
  const heads = open.map(readHead);
  const entries = kept.map(readKept);
  return {
    heads: heads.filter((head) => head !== null),
    kept: entries.filter((entry) => entry !== null),
    asides: aside.map(readAside).filter((one) => one !== null),
    rubbish: {
      open: openKeys.filter((_, i) => heads[i] === null),
      kept: keptKeys.filter((_, i) => entries[i] === null),
    },
  };
}

/** Another tab may have been here first: then there is nothing left to move. */
async function moveAside(base: Base, key: string, newId: () => string): Promise<void> {
  await changeShelves(base, ['open', 'aside'], async (change) => {
    const record = await change.objectStore('open').get(key);
    if (record === undefined) return;
    await change.objectStore('aside').put(asideOf(newId(), 'unreadable', record));
    await change.objectStore('open').delete(key);
  });
}

/** A lost entry is made anew from the run's file; without a file that can be read, entry and file go aside. */
async function mendKept(base: Base, key: string, newId: () => string): Promise<void> {
  await changeShelves(base, ['kept', 'texts', 'aside'], async (change) => {
    const kept = change.objectStore('kept');
    const record: unknown = await kept.get(key);
    if (record === undefined) return;
    const text = ((await change.objectStore('texts').get(key)) as { text?: unknown } | undefined)?.text;
    const entry = entryFromText(key, typeof text === 'string' ? text : null);
    if (entry !== null) {
      await kept.put(keptRecord({ ...entry, serial: await nextSerial(kept) }));
      return;
    }
    const whole = isObject(record) ? { ...record, text } : record;
    await change.objectStore('aside').put(asideOf(newId(), 'unreadable', whole));
    await kept.delete(key);
    await change.objectStore('texts').delete(key);
  });
}

type KeptShelf = IDBPObjectStore<Shelves, Shelf[], 'kept', 'readwrite'>;

/** Rubbish may stand under a serial too; no real serial is this large. */
const MOST_SERIAL = 1e9;

/** One more than the last that was kept, whichever tab kept it. */
export async function nextSerial(kept: KeptShelf): Promise<number> {
  const last = await kept.index('bySerial').openKeyCursor(IDBKeyRange.upperBound(MOST_SERIAL), 'prev');
  return (last?.key ?? 0) + 1;
}

export interface FoundOpen extends ReadOpen {
  readonly savedAtMs: number;
}

/** The open runs of a scenario that can be read, the last written first; the others go aside. */
export async function readOpenRuns(base: Base, scenarioId: string, newId: () => string): Promise<readonly FoundOpen[]> {
  const records: readonly OpenRecord[] = await base.getAllFromIndex('open', 'byScenario', scenarioId);
  const found: FoundOpen[] = [];
  for (const record of records) {
    const read = readOpenRun(record);
    if (read !== null) found.push({ ...read, savedAtMs: record.savedAtMs });
    else await moveAside(base, record.runId, newId).catch(() => {});
  }
  return found.sort((a, b) => b.savedAtMs - a.savedAtMs);
}

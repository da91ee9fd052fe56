/**
 * Receivers of somebody's own, kept in this browser: the two texts of each, in a database beside that of the runs. A receiver is kept only where it passes every check,
 * and it is read through all of them again before anything stands on it.
 */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import * as v from 'valibot';
import type { Result } from '../../base/result.ts';
import type { LoadedReceiver } from '../../files/library.ts';
import { TEXT_LIMIT_CHARS } from '../../files/parseJson.ts';
import { type ReceiverPair, readReceiverPair } from '../../files/readReceiverPair.ts';
import { deckFile, fileId, text } from '../../files/schemaPieces.ts';
import { MAX_TEXT } from '../../physics/deckWords.ts';
import { receiverHash } from '../../run/serialise.ts';

export interface OwnReceiverEntry {
  readonly id: string;
  readonly setName: string;
  readonly savedAtMs: number;
}

export interface BroughtReceiver extends OwnReceiverEntry {
  /** of the receiver, as runs and sheets name it */
  readonly hash: string;
}

export interface OwnReceivers {
  /** by name */
  list(): Promise<readonly OwnReceiverEntry[]>;
  /** the texts as they were kept; null: none of that id, or nothing that can be read */
  texts(id: string): Promise<ReceiverPair | null>;
  /** The very one of that hash, where a run or a sheet says which; else the one that was kept under the id, else the last that a sheet brought. null: none. */
  read(id: string, hash?: string): Promise<Result<LoadedReceiver> | null>;
  /** the texts of the one that `read` gives */
  textsOf(id: string, hash?: string): Promise<ReceiverPair | null>;
  /** Takes in what a sheet brings. It stands apart from those that were made here, so that neither ever takes the other's place; and it stays, for the runs on it. */
  bring(pair: ReceiverPair): Promise<Result<LoadedReceiver>>;
  /** Takes the place of one of the same id. What does not pass every check is not kept. */
  keep(pair: ReceiverPair): Promise<Result<LoadedReceiver>>;
  drop(id: string): Promise<void>;
  /** what sheets have brought, by name */
  brought(): Promise<readonly BroughtReceiver[]>;
  /** for good: what stands on it can no longer be played, shown or judged here */
  dropBrought(hash: string): Promise<void>;
  /** told when the list changes in this tab; returns what stops it */
  subscribe(listener: () => void): () => void;
}

const recordSchema = v.strictObject({
  id: fileId(),
  setName: text(60),
  savedAtMs: v.pipe(v.number(), v.finite()),
  deckFile: deckFile(),
  deckText: v.pipe(v.string(), v.maxLength(MAX_TEXT)),
  receiverText: v.pipe(v.string(), v.maxLength(TEXT_LIMIT_CHARS)),
});
type OwnRecord = v.InferOutput<typeof recordSchema>;

const broughtSchema = v.strictObject({ ...recordSchema.entries, hash: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)) });
type BroughtRecord = v.InferOutput<typeof broughtSchema>;

interface Shelves extends DBSchema {
  receivers: { key: string; value: OwnRecord };
  brought: { key: string; value: BroughtRecord; indexes: { byId: string } };
}

export function createOwnReceivers(parts: { readonly name: string; readonly now: () => number }): OwnReceivers {
  const listeners = new Set<() => void>();
  let opening: Promise<IDBPDatabase<Shelves>> | null = null;
  const base = (): Promise<IDBPDatabase<Shelves>> => {
    opening ??= (async () =>
      openDB<Shelves>(parts.name, 2, {
        upgrade(fresh, from) {
          if (from < 1) fresh.createObjectStore('receivers', { keyPath: 'id' });
          fresh.createObjectStore('brought', { keyPath: 'hash' }).createIndex('byId', 'id');
        },
        blocking: (_from, _to, event) => (event.target as IDBDatabase).close(),
      }))();
    // What could not be opened is tried again when it is wanted again.
    opening.catch(() => {
      opening = null;
    });
    return opening;
  };
  const told = (): void => {
    for (const listener of [...listeners]) listener();
  };
  const texts = async (id: string): Promise<ReceiverPair | null> => {
    const record = recordOf(await (await base()).get('receivers', id));
    return record === null ? null : pairOf(record);
  };
  // Where there is no database, what a sheet brought lasts as long as the page, like the rest of the sheet.
  const held = new Map<string, BroughtRecord>();
  const allBrought = async (id?: string): Promise<readonly BroughtRecord[]> => {
    const stored = await base()
      .then((open) => (id === undefined ? open.getAll('brought') : open.getAllFromIndex('brought', 'byId', id)))
      .catch(() => []);
    const records = [...stored.map(broughtOf), ...held.values()].filter((one) => one !== null);
    return [...new Map(records.map((one) => [one.hash, one])).values()];
  };
  const broughtAs = async (id: string): Promise<readonly BroughtRecord[]> =>
    (await allBrought(id)).filter((one) => one.id === id).sort((a, b) => b.savedAtMs - a.savedAtMs);
  const textsOf = async (id: string, hash?: string): Promise<ReceiverPair | null> => {
    const brought = await broughtAs(id);
    const same = brought.find((one) => one.hash === hash);
    if (same !== undefined) return pairOf(same);
    const [last] = brought;
    if (last === undefined) return texts(id);
    return (await texts(id).catch(() => null)) ?? pairOf(last);
  };
  const recordFor = ({ receiver }: LoadedReceiver, pair: ReceiverPair): OwnRecord => ({
    ...{ id: receiver.id, setName: receiver.setName, savedAtMs: parts.now(), deckFile: receiver.deck },
    ...{ deckText: pair.deck.text, receiverText: pair.receiver.text },
  });
  return {
    async list() {
      const all = (await (await base()).getAll('receivers')).map(recordOf).filter((one) => one !== null);
      return all.map(({ id, setName, savedAtMs }) => ({ id, setName, savedAtMs })).sort(byName);
    },
    texts,
    textsOf,
    async read(id, hash) {
      const pair = await textsOf(id, hash);
      return pair === null ? null : readReceiverPair(pair);
    },
    async bring(pair) {
      const read = readReceiverPair(pair);
      if (!read.ok) return read;
      const record = { ...recordFor(read.value, pair), hash: receiverHash(read.value) };
      held.set(record.hash, record);
      await base()
        .then((open) => open.put('brought', record))
        .catch(() => {});
      told();
      return read;
    },
    async brought() {
      const all = await allBrought();
      return all.map(({ hash, id, setName, savedAtMs }) => ({ hash, id, setName, savedAtMs })).sort(byName);
    },
    async dropBrought(hash) {
      held.delete(hash);
      await base()
        .then((open) => open.delete('brought', hash))
        .catch(() => {});
      told();
    },
    async keep(pair) {
      const read = readReceiverPair(pair);
      if (!read.ok) return read;
      await (await base()).put('receivers', recordFor(read.value, pair));
      told();
      return read;
    },
    async drop(id) {
      await (await base()).delete('receivers', id);
      told();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

const byName = (a: OwnReceiverEntry, b: OwnReceiverEntry): number =>
  a.setName.localeCompare(b.setName) || a.id.localeCompare(b.id);

/** Nothing that comes back from storage is believed. */
function recordOf(stored: unknown): OwnRecord | null {
  const read = v.safeParse(recordSchema, stored);
  return read.success ? read.output : null;
}

function broughtOf(stored: unknown): BroughtRecord | null {
  const read = v.safeParse(broughtSchema, stored);
  return read.success ? read.output : null;
}

const pairOf = ({ id, deckFile: file, deckText, receiverText }: OwnRecord | BroughtRecord): ReceiverPair => ({
  deck: { file, text: deckText },
  receiver: { file: `${id}.json`, text: receiverText },
});

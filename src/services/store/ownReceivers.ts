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

export interface OwnReceiverEntry {
  readonly id: string;
  readonly setName: string;
  readonly savedAtMs: number;
}

export interface OwnReceivers {
  /** by name */
  list(): Promise<readonly OwnReceiverEntry[]>;
  /** the texts as they were kept; null: none of that id, or nothing that can be read */
  texts(id: string): Promise<ReceiverPair | null>;
  /** null: none of that id */
  read(id: string): Promise<Result<LoadedReceiver> | null>;
  /** Takes the place of one of the same id. What does not pass every check is not kept. */
  keep(pair: ReceiverPair): Promise<Result<LoadedReceiver>>;
  drop(id: string): Promise<void>;
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

interface Shelves extends DBSchema {
  receivers: { key: string; value: OwnRecord };
}

export function createOwnReceivers(parts: { readonly name: string; readonly now: () => number }): OwnReceivers {
  const listeners = new Set<() => void>();
  let opening: Promise<IDBPDatabase<Shelves>> | null = null;
  const base = (): Promise<IDBPDatabase<Shelves>> => {
    opening ??= openDB<Shelves>(parts.name, 1, {
      upgrade: (fresh) => void fresh.createObjectStore('receivers', { keyPath: 'id' }),
      blocking: (_from, _to, event) => (event.target as IDBDatabase).close(),
    });
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
  return {
    async list() {
      const all = (await (await base()).getAll('receivers')).map(recordOf).filter((one) => one !== null);
      return all
        .map(({ id, setName, savedAtMs }) => ({ id, setName, savedAtMs }))
        .sort((a, b) => a.setName.localeCompare(b.setName) || a.id.localeCompare(b.id));
    },
    texts,
    async read(id) {
      const pair = await texts(id);
      return pair === null ? null : readReceiverPair(pair);
    },
    async keep(pair) {
      const read = readReceiverPair(pair);
      if (!read.ok) return read;
      const { id, setName, deck: deckFileName } = read.value.receiver;
      await (await base()).put('receivers', {
        ...{ id, setName, savedAtMs: parts.now(), deckFile: deckFileName },
        ...{ deckText: pair.deck.text, receiverText: pair.receiver.text },
      });
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

/** Nothing that comes back from storage is believed. */
function recordOf(stored: unknown): OwnRecord | null {
  const read = v.safeParse(recordSchema, stored);
  return read.success ? read.output : null;
}

const pairOf = ({ id, deckFile: file, deckText, receiverText }: OwnRecord): ReceiverPair => ({
  deck: { file, text: deckText },
  receiver: { file: `${id}.json`, text: receiverText },
});

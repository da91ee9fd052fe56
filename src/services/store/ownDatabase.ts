/** The database behind the shelf of own scenarios. What comes back is looked at before it is believed; what is no record of ours is left where it is and not shown. */
import { type DBSchema, openDB } from 'idb';
import * as v from 'valibot';
import { isEntry } from '../library/readEntries.ts';
import type { OwnEvening } from './ownEvening.ts';
import type { OwnExam } from './ownExam.ts';
import type { OwnScenario } from './ownScenario.ts';

interface Layout extends DBSchema {
  scenarios: { key: string; value: OwnScenario; indexes: { byId: string } };
  evenings: { key: string; value: OwnEvening };
  exams: { key: string; value: OwnExam };
}

export interface OwnDatabase {
  all(): Promise<readonly OwnScenario[]>;
  /** every version of an id */
  of(id: string): Promise<readonly OwnScenario[]>;
  put(one: OwnScenario): Promise<void>;
  remove(hashes: readonly string[]): Promise<void>;
  evenings(): Promise<readonly OwnEvening[]>;
  putEvening(one: OwnEvening): Promise<void>;
  removeEvening(hash: string): Promise<void>;
  exams(): Promise<readonly OwnExam[]>;
  putExam(one: OwnExam): Promise<void>;
  removeExam(hash: string): Promise<void>;
  close(): void;
}

const OWN_DATABASE = 'haystack-own';
const LONGEST_TEXT = 1_048_576;

const engine = () => v.pipe(v.string(), v.maxLength(20));
const name = (most: number) => v.pipe(v.string(), v.minLength(1), v.maxLength(most));
const minutesEach = () => v.pipe(v.array(v.nullable(v.number())), v.maxLength(20));
const passMark = () => v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(20));
const eveningRecord = v.object({
  hash: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)),
  title: name(60),
  author: v.nullable(name(80)),
  order: v.picklist(['listed', 'any']),
  minutes: v.nullable(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(480))),
  minutesEach: v.optional(minutesEach()),
  passMark: v.optional(passMark()),
  scenarios: v.pipe(v.array(name(40)), v.maxLength(20)),
  addedAtMs: v.pipe(v.number(), v.minValue(0), v.maxValue(1e14)),
});
const day = () => v.pipe(v.number(), v.minValue(0), v.maxValue(1e14));
const hash = () => v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/));
const examRecord = v.object({
  hash: hash(),
  title: name(60),
  author: v.nullable(name(80)),
  minutes: v.nullable(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(480))),
  count: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(20)),
  candidates: v.picklist(['numbers', 'names']),
  text: v.pipe(v.string(), v.maxLength(LONGEST_TEXT)),
  addedAtMs: day(),
  opened: v.nullable(
    v.object({
      candidate: name(80),
      openedAtMs: day(),
      sheet: hash(),
      order: v.picklist(['listed', 'any']),
      attempts: v.picklist(['one', 'several']),
      ownDeal: v.boolean(),
      // What was opened before sheets could say so told the points after each run.
      results: v.optional(v.picklist(['atEnd', 'each']), 'each'),
      minutesEach: v.optional(v.nullable(minutesEach()), null),
      passMark: v.optional(v.nullable(passMark()), null),
      scenarios: v.pipe(v.array(name(40)), v.maxLength(20)),
      handedIn: v.boolean(),
    }),
  ),
});
const recordSchema = v.object({
  hash: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)),
  id: v.pipe(v.string(), v.regex(/^[a-z0-9-]{1,40}$/)),
  text: v.pipe(v.string(), v.maxLength(LONGEST_TEXT)),
  addedAtMs: v.pipe(v.number(), v.minValue(0), v.maxValue(1e14)),
  entry: v.custom<OwnScenario['entry']>(isEntry),
  receiverHash: v.exactOptional(v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/))),
  certificate: v.nullable(
    v.variant('kind', [
      v.object({
        kind: v.literal('certified'),
        engine: engine(),
        receiverHash: v.exactOptional(hash()),
        par: v.object({
          turns: v.pipe(v.number(), v.minValue(0), v.maxValue(2000)),
          seconds: v.pipe(v.number(), v.minValue(0), v.maxValue(14_400)),
        }),
      }),
      v.object({ kind: v.literal('refused'), engine: engine(), receiverHash: v.exactOptional(hash()) }),
    ]),
  ),
});

function readable(records: readonly unknown[]): readonly OwnScenario[] {
  return records.flatMap((record) => {
    const read = v.safeParse(recordSchema, record);
    return read.success && read.output.entry.id === read.output.id ? [read.output] : [];
  });
}

export async function openOwnDatabase(name: string): Promise<OwnDatabase> {
  const base = await openDB<Layout>(name, 3, {
    upgrade(fresh, from) {
      if (from < 1) fresh.createObjectStore('scenarios', { keyPath: 'hash' }).createIndex('byId', 'id');
      if (from < 2) fresh.createObjectStore('evenings', { keyPath: 'hash' });
      fresh.createObjectStore('exams', { keyPath: 'hash' });
    },
    blocking: (_from, _to, event) => (event.target as IDBDatabase).close(),
  });
  return {
    all: async () => readable(await base.getAll('scenarios')),
    of: async (id) => readable(await base.getAllFromIndex('scenarios', 'byId', id)),
    async put(one) {
      await base.put('scenarios', one);
    },
    async remove(hashes) {
      const change = base.transaction('scenarios', 'readwrite');
      await Promise.all([...hashes.map((hash) => change.store.delete(hash)), change.done]);
    },
    evenings: async () =>
      (await base.getAll('evenings')).flatMap((record: unknown) => {
        const read = v.safeParse(eveningRecord, record);
        return read.success ? [read.output] : [];
      }),
    async putEvening(one) {
      await base.put('evenings', one);
    },
    removeEvening: (hash) => base.delete('evenings', hash),
    exams: async () =>
      (await base.getAll('exams')).flatMap((record: unknown) => {
        const read = v.safeParse(examRecord, record);
        return read.success ? [read.output] : [];
      }),
    async putExam(one) {
      await base.put('exams', one);
    },
    removeExam: (hash) => base.delete('exams', hash),
    close: () => base.close(),
  };
}

/** For a worker that judges a run: the shelf's scenarios of an id; none where the shelf cannot be had. */
export async function ownOf(id: string): Promise<readonly OwnScenario[]> {
  try {
    const base = await openOwnDatabase(OWN_DATABASE);
    const found = await base.of(id);
    base.close();
    return found;
  } catch {
    return [];
  }
}

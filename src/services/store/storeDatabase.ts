/** What the logbook does with its database, each act whole or not at all. Every act rejects with what went wrong; the logbook says what that means. */
import { carryOverFor } from './carryOver.ts';
import type { Aside, FreshRun, KeptRun, OpenRun } from './keptRuns.ts';
import { changeShelves, keptRecord, openDatabase } from './layout.ts';
import { stowCopy } from './leftCopies.ts';
import type { LeftCopy } from './lifeboat.ts';
import { type FoundOpen, type Index, nextSerial, readIndex, readOpenRuns } from './shelfReading.ts';

export interface StoreDatabase {
  index(): Promise<Index>;
  /** the open runs of a scenario that can be read, the last written first */
  openRuns(scenarioId: string): Promise<readonly FoundOpen[]>;
  /** the file of a kept run; null where there is none */
  text(runId: string): Promise<string | null>;
  putOpen(run: OpenRun, savedAtMs: number): Promise<void>;
  dropOpen(runId: string): Promise<void>;
  /** Takes a signed run and lets go of the open one that it was. A run that is there already stays as it is: this one gets another name. */
  keep(run: FreshRun, text: string, openId: string): Promise<KeptRun>;
  putKept(run: KeptRun): Promise<void>;
  /** an open run is replaced by what can be used of it, or taken away; `instead` null: no open run has to do with it */
  setAside(one: Aside, instead: { readonly runId: string; readonly run: OpenRun | null } | null): Promise<void>;
  dropAside(id: string): Promise<void>;
  /** takes up a copy from the lifeboat */
  stow(copy: LeftCopy): Promise<void>;
  /** every record as it is, readable or not */
  everything(): Promise<Readonly<Record<string, readonly unknown[]>>>;
}

export interface DatabaseGiven {
  readonly name: string;
  readonly now: () => number;
  readonly newId: () => string;
  /** another tab holds the database open in an older layout and does not let go */
  readonly waiting: () => void;
  /** another tab wants a newer layout; this one has let go */
  readonly outdated: () => void;
  /** the browser closed the database by itself */
  readonly lost: () => void;
}

export async function openStoreDatabase(given: DatabaseGiven): Promise<StoreDatabase> {
  const { newId } = given;
  const base = await openDatabase({ ...given, carryOver: carryOverFor(given) });
  return {
    index: () => readIndex(base, newId),
    openRuns: (scenarioId) => readOpenRuns(base, scenarioId, newId),
    async text(runId) {
      const record: unknown = await base.get('texts', runId);
      const text = (record as { text?: unknown } | undefined)?.text;
      return typeof text === 'string' ? text : null;
    },
    async putOpen(run, savedAtMs) {
      await base.put('open', { ...run, savedAtMs });
    },
    dropOpen: (runId) => base.delete('open', runId),
    async keep(run, text, openId) {
      let kept: KeptRun = { ...run, serial: 0 };
      const job: Parameters<typeof changeShelves>[2] = async (change) => {
        const shelf = change.objectStore('kept');
        const texts = change.objectStore('texts');
        const taken = (await shelf.getKey(run.runId)) !== undefined || (await texts.getKey(run.runId)) !== undefined;
        kept = { ...run, runId: taken ? newId() : run.runId, serial: await nextSerial(shelf) };
        await shelf.add(keptRecord(kept));
        await texts.add({ runId: kept.runId, text });
        await change.objectStore('open').delete(openId);
      };
      await changeShelves(base, ['open', 'kept', 'texts'], job, 'strict');
      return kept;
    },
    async putKept(run) {
      await base.put('kept', keptRecord(run));
    },
    setAside: (one, instead) =>
      changeShelves(base, ['open', 'aside'], async (change) => {
        await change.objectStore('aside').put(one);
        if (instead === null) return;
        const { runId, run } = instead;
        if (run === null) await change.objectStore('open').delete(runId);
        else await change.objectStore('open').put({ ...run, savedAtMs: given.now() });
      }),
    dropAside: (id) => base.delete('aside', id),
    stow: (copy) => stowCopy(base, copy, newId),
    async everything() {
      const names = ['open', 'kept', 'texts', 'aside'] as const;
      const shelves = await Promise.all(names.map(async (name) => [name, await base.getAll(name)] as const));
      return Object.fromEntries(shelves);
    },
  };
}

export { readLeftCopy } from './leftCopies.ts';
export { anyText } from './records.ts';

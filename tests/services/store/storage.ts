/** Storage for the tests of the store: databases that begin empty, a local storage, tabs that hear one another, runs to be kept. */
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { vi } from 'vitest';
import { claimOf, grade } from '../../../src/grading/grade.ts';
import { serialiseRunFile, toRunFile } from '../../../src/run/serialise.ts';
import { entryOfReport } from '../../../src/services/store/indexEntry.ts';
import type { FreshRun, OpenRun } from '../../../src/services/store/keptRuns.ts';
import type { BoatStorage } from '../../../src/services/store/lifeboat.ts';
import type { Logbook } from '../../../src/services/store/logbook.ts';
import { openLogbook } from '../../../src/services/store/openLogbook.ts';
import type { TabChannel } from '../../../src/services/store/tabChannel.ts';
import { runOf } from '../../run/runs.ts';
import { wholeJob } from '../../session/acts.ts';
import { setupOf } from '../../technician/oneScenario.ts';

export function emptyMachine(): void {
  globalThis.indexedDB = new IDBFactory();
}

export type Held = Record<string, string>;

export function localStorageOf(held: Held): BoatStorage {
  return {
    get length() {
      return Object.keys(held).length;
    },
    key: (i) => Object.keys(held)[i] ?? null,
    getItem: (key) => held[key] ?? null,
    setItem(key, text) {
      held[key] = text;
    },
    removeItem(key) {
      delete held[key];
    },
  };
}

/** The tabs of one browser: what one posts, the others hear. */
export function tabs(): () => TabChannel {
  const listeners = new Map<TabChannel, Set<(message: unknown) => void>>();
  return () => {
    const own = new Set<(message: unknown) => void>();
    const channel: TabChannel = {
      post(message) {
        for (const [other, all] of listeners) {
          if (other !== channel) for (const listener of [...all]) listener(structuredClone(message));
        }
      },
      listen(listener) {
        own.add(listener);
        return () => own.delete(listener);
      },
    };
    listeners.set(channel, own);
    return channel;
  };
}

export interface Opened {
  readonly logbook: Logbook;
  readonly held: Held;
}

let day = 1_000;
let names = 0;

/** Every opening is a tab: the same machine, and a local storage that is handed on. */
export async function openTab(held: Held = {}, channel: TabChannel | null = null): Promise<Opened> {
  const opened = startTab(held, channel);
  await opened.logbook.ready;
  return opened;
}

export function startTab(held: Held = {}, channel: TabChannel | null = null): Opened {
  const logbook = openLogbook({
    name: 'haystack',
    storage: () => localStorageOf(held),
    now: () => ++day,
    newId: () => `made-${++names}`,
    channel,
  });
  return { logbook, held };
}

const setup = setupOf('first-curve');
const acts = wholeJob(setup);

/** A run of the first scenario that lies open after so many acts. */
export function openRun(runId: string, count = 9): OpenRun {
  const { events, state } = runOf(setup, acts.slice(0, count));
  const { scenario } = setup;
  const elapsedMs = 1000 + (events.at(-1)?.atMs ?? 0);
  const session = { value: 'working' };
  return {
    runId,
    scenarioId: scenario.id,
    learner: null,
    scenario,
    scenarioHash: null,
    attempt: null,
    events,
    elapsedMs,
    session,
    turns: state.turnsMade,
  };
}

const signed = runOf(setup, acts);
const report = grade(setup, signed.events);
const text = serialiseRunFile(toRunFile(signed, claimOf(report)));

/** A run of the first scenario that was signed off, and its file. */
export function signedRun(runId: string): { readonly run: FreshRun; readonly text: string } {
  return { run: entryOfReport(runId, { scenario: setup.scenario, learner: null }, report, 1.7e12), text };
}

/** The database as anybody may open it. */
export function rawDatabase(): Promise<IDBDatabase> {
  return asked(indexedDB.open('haystack'));
}

export function asked<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** Everything that stands on a shelf. */
export async function shelf(name: string): Promise<readonly Record<string, unknown>[]> {
  const base = await rawDatabase();
  const all = await asked(base.transaction(name).objectStore(name).getAll());
  base.close();
  return all;
}

/** Puts anything on a shelf. */
export async function scribble(name: string, ...records: readonly unknown[]): Promise<void> {
  const base = await rawDatabase();
  const change = base.transaction(name, 'readwrite');
  for (const record of records) await asked(change.objectStore(name).put(record));
  base.close();
}

const noRoom = (): never => {
  throw new DOMException('no room', 'QuotaExceededError');
};
/** From now on nothing more can be written. */
export function fillDisk(): { free(): void } {
  const puts = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(noRoom);
  const adds = vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(noRoom);
  return {
    free() {
      puts.mockRestore();
      adds.mockRestore();
    },
  };
}

/**
 * What is kept between visits: the runs lying open on the bench and the runs signed off, in IndexedDB on this machine only.
 * Where storage is blocked, full or broken, everything goes on in memory and `note` says so.
 */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { KeptRun, OpenRun } from './keptRuns.ts';
import { createLifeboat } from './lifeboat.ts';

export type StorageNote = 'memoryOnly' | 'full' | 'corrupted' | null;

interface Shelves extends DBSchema {
  open: { key: string; value: OpenRun };
  kept: { key: string; value: KeptRun };
}

export interface Logbook {
  note(): StorageNote;
  openRuns(): readonly OpenRun[];
  keptRuns(): readonly KeptRun[];
  saveOpen(run: OpenRun): Promise<void>;
  /** as `saveOpen`, for a page that is going away: written before it returns */
  saveLast(run: OpenRun): void;
  dropOpen(scenarioId: string): Promise<void>;
  keep(run: KeptRun): Promise<void>;
  /** told when `note` changes; returns what stops it */
  onNote(listener: () => void): () => void;
}

/** Opens the logbook. Never rejects: without a working database it is a logbook in memory. */
export async function openLogbook(name = 'haystack'): Promise<Logbook> {
  const boat = createLifeboat(name, () => localStorage);
  const open = new Map<string, OpenRun>();
  const kept = new Map<string, KeptRun>();
  const listeners = new Set<() => void>();
  let note: StorageNote = null;
  let db: IDBPDatabase<Shelves> | null = null;

  const setNote = (next: StorageNote): void => {
    if (note === next) return;
    note = next;
    for (const listener of listeners) listener();
  };
  try {
    db = await openDB<Shelves>(name, 1, {
      upgrade(fresh) {
        fresh.createObjectStore('open', { keyPath: 'scenarioId' });
        fresh.createObjectStore('kept', { keyPath: 'runId' });
      },
      // Another tab wants a newer layout: let it, and go on in memory here.
      blocking: (_from, _to, event) => {
        (event.target as IDBDatabase).close();
        db = null;
        setNote('memoryOnly');
      },
      terminated: () => {
        db = null;
        setNote('memoryOnly');
      },
    });
    for (const run of await db.getAll('open')) if (looksOpen(run)) open.set(run.scenarioId, run);
    for (const run of await db.getAll('kept')) {
      if (looksKept(run)) kept.set(run.runId, run);
      else note = 'corrupted';
    }
  } catch {
    db = null;
    note = 'memoryOnly';
  }

  const write = async (job: (base: IDBPDatabase<Shelves>) => Promise<unknown>): Promise<void> => {
    if (db === null) return;
    try {
      await job(db);
      if (note === 'full') setNote(null);
    } catch (error) {
      setNote(error instanceof DOMException && error.name === 'QuotaExceededError' ? 'full' : 'memoryOnly');
    }
  };

  const left = boat.find();
  if (looksLeft(left) && isNewer(left, open.get(left.scenarioId))) {
    open.set(left.scenarioId, left);
    await write((base) => base.put('open', left));
  }
  if (db !== null) boat.clear();

  const saveOpen = (run: OpenRun): Promise<void> => {
    open.set(run.scenarioId, run);
    return write((base) => base.put('open', run));
  };

  return {
    note: () => note,
    openRuns: () => [...open.values()],
    keptRuns: () => [...kept.values()].sort((a, b) => a.serial - b.serial),
    saveOpen,
    saveLast(run) {
      boat.put(run);
      void saveOpen(run);
    },
    dropOpen(scenarioId) {
      open.delete(scenarioId);
      boat.clear();
      return write((base) => base.delete('open', scenarioId));
    },
    keep(run) {
      kept.set(run.runId, run);
      return write((base) => base.put('kept', run));
    },
    onNote(listener) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}

function looksLeft(left: unknown): left is OpenRun {
  return typeof left === 'object' && left !== null && looksOpen(left as OpenRun);
}

/** Of one run, the state that has more of it; a run that the database has never heard of is newer than any. */
function isNewer(left: OpenRun, kept: OpenRun | undefined): boolean {
  if (kept === undefined || kept.runId !== left.runId) return true;
  return left.events.length > kept.events.length || left.elapsedMs >= kept.elapsedMs;
}

function looksOpen(run: OpenRun): boolean {
  return typeof run.scenarioId === 'string' && Array.isArray(run.events) && Number.isFinite(run.elapsedMs);
}

function looksKept(run: KeptRun): boolean {
  return typeof run.runId === 'string' && typeof run.text === 'string' && Number.isFinite(run.total);
}

/** The layout of the database on this machine, its opening, and the one way to change it. */
import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb';
import type { Aside, KeptRun, OpenRun } from './keptRuns.ts';

/** What the database sorts kept runs by besides what is in them: its keys can be neither yes nor no, nor parts of a line. */
export interface KeptRecord extends KeptRun {
  readonly sealedKey: 0 | 1;
  /** lines with full marks, and lines without; lines whose full marks are not known stand in neither */
  readonly earned: readonly string[];
  readonly lost: readonly string[];
  /** `slug A1`, `part C9` */
  readonly causes: readonly string[];
}

export interface OpenRecord extends OpenRun {
  readonly savedAtMs: number;
}

export interface Shelves extends DBSchema {
  open: { key: string; value: OpenRecord; indexes: { byScenario: string } };
  kept: {
    key: string;
    value: KeptRecord;
    indexes: {
      bySerial: number;
      byDate: number;
      byScenario: string;
      byReceiver: string;
      byTrack: string;
      byPoints: number;
      bySealed: number;
      byLearner: string;
      byEarned: string;
      byLost: string;
      byCause: string;
    };
  };
  texts: { key: string; value: { readonly runId: string; readonly text: string } };
  aside: { key: string; value: Aside };
}

export type Base = IDBPDatabase<Shelves>;
export type Shelf = StoreNames<Shelves>;
export type Upgrade = IDBPTransaction<Shelves, Shelf[], 'versionchange'>;
export type Change = IDBPTransaction<Shelves, Shelf[], 'readwrite'>;

/** Takes what an older layout held, lays out today's, and puts it there. */
export type CarryOver = (base: Base, from: number, change: Upgrade, layOut: () => void) => Promise<void>;

const VERSION = 2;
/** Points nearer than this are the same: reports round to hundredths. */
const SAME_POINTS = 0.005;

export interface OpeningGiven {
  readonly name: string;
  readonly carryOver: CarryOver;
  /** another tab holds the database open in an older layout and does not let go */
  readonly waiting: () => void;
  /** another tab wants a newer layout */
  readonly outdated: () => void;
  /** the browser closed the database by itself */
  readonly lost: () => void;
}

export async function openDatabase(given: OpeningGiven): Promise<Base> {
  let failure: { readonly error: unknown } | null = null;
  const opening = openDB<Shelves>(given.name, VERSION, {
    upgrade(base, from, _to, change) {
      change.done.catch(() => {});
      // Half a change of layout would cost records: where any of it fails the database stays as it was.
      given
        .carryOver(base, from, change, () => layOut(base))
        .catch((error: unknown) => {
          failure = { error };
          change.abort();
        });
    },
    blocked: given.waiting,
    blocking(_from, _to, event) {
      (event.target as IDBDatabase).close();
      given.outdated();
    },
    terminated: given.lost,
  });
  try {
    return await opening;
  } catch (error) {
    throw (failure as { readonly error: unknown } | null)?.error ?? error;
  }
}

/**
 * Changes shelves all together or not at all. `strict`: not done before it is on the disk, for what cannot be made again.
 * Rejects with what went wrong, be it a single request or the writing of the whole (a full disk may show only there).
 */
export async function changeShelves(
  base: Base,
  shelves: Shelf[],
  job: (change: Change) => Promise<void>,
  durability: 'strict' | 'default' = 'default',
): Promise<void> {
  const change = base.transaction(shelves, 'readwrite', { durability });
  const done = change.done.then(
    () => null,
    (error: unknown) => ({ error }),
  );
  try {
    await job(change);
  } catch (error) {
    try {
      change.abort();
    } catch {
      // It has ended by itself, of the same trouble.
    }
    await done;
    throw change.error ?? error;
  }
  const failed = await done;
  if (failed !== null) throw change.error ?? failed.error;
}

function layOut(base: Base): void {
  base.createObjectStore('open', { keyPath: 'runId' }).createIndex('byScenario', 'scenarioId');
  const kept = base.createObjectStore('kept', { keyPath: 'runId' });
  kept.createIndex('bySerial', 'serial');
  kept.createIndex('byDate', 'signedAtMs');
  kept.createIndex('byScenario', 'scenarioId');
  kept.createIndex('byReceiver', 'receiver');
  kept.createIndex('byTrack', 'track');
  kept.createIndex('byPoints', 'total');
  kept.createIndex('bySealed', 'sealedKey');
  kept.createIndex('byLearner', 'learner');
  kept.createIndex('byEarned', 'earned', { multiEntry: true });
  kept.createIndex('byLost', 'lost', { multiEntry: true });
  kept.createIndex('byCause', 'causes', { multiEntry: true });
  base.createObjectStore('texts', { keyPath: 'runId' });
  base.createObjectStore('aside', { keyPath: 'id' });
}

export function keptRecord(run: KeptRun): KeptRecord {
  const counted = run.lines.filter((line) => line.max !== null);
  const full = (line: KeptRun['lines'][number]): boolean => line.points > line.max! - SAME_POINTS;
  return {
    ...run,
    sealedKey: run.sealed ? 1 : 0,
    earned: counted.filter(full).map((line) => line.id),
    lost: counted.filter((line) => !full(line)).map((line) => line.id),
    causes: [...new Set(run.lines.flatMap(({ cause }) => (cause === null ? [] : [causeKey(cause)])))],
  };
}

function causeKey(cause: NonNullable<KeptRun['lines'][number]['cause']>): string {
  return cause.kind === 'slug' ? `slug ${cause.slug}` : `part ${cause.part}`;
}

/**
 * Opens the logbook: IndexedDB on this machine only. It is there at once and empty; `ready` says when what is stored has been read. Where storage is blocked,
 * full or broken, everything goes on in memory and `trouble` says so. Nothing leaves the database before what replaces it stands there.
 *
 * Over 300 lines: every act of the logbook works on the one picture of what is kept.
 */
import type { Aside, FreshRun, KeptRun, OpenHead, OpenRun } from './keptRuns.ts';
import { type BoatStorage, createLifeboat } from './lifeboat.ts';
import type { Logbook, StorageTrouble } from './logbook.ts';
import type { StoreDatabase } from './storeDatabase.ts';
import type { TabChannel } from './tabChannel.ts';

export interface LogbookParts {
  readonly name: string;
  /** asked for anew each time: where it is blocked, the asking itself throws */
  readonly storage: () => BoatStorage;
  /** the day's clock, milliseconds since 1970 */
  readonly now: () => number;
  readonly newId: () => string;
  readonly channel: TabChannel | null;
}

/** Said to the other tabs, so that they look again. */
const CHANGED = 'the shelves have changed';

/** A signed run that the database has not taken yet, and the open run that it was. */
interface Waiting {
  readonly run: FreshRun;
  readonly text: string;
  readonly openId: string;
}

export function openLogbook(parts: LogbookParts): Logbook {
  const { now, newId, channel } = parts;
  const boat = createLifeboat(parts.name, parts.storage);
  const heads = new Map<string, OpenHead>();
  const kept = new Map<string, KeptRun>();
  const asides = new Map<string, Aside>();
  // What the database has not taken: it lives in memory, and is tried again.
  const unsavedOpen = new Map<string, OpenRun>();
  const unsavedKept = new Map<string, Waiting>();
  const unsavedAsides = new Map<string, Aside>();
  const listeners = new Set<() => void>();
  let trouble: StorageTrouble | null = null;
  let base: StoreDatabase | null = null;
  let isReady = false;
  let tryingAgain = false;

  const tell = (): void => {
    for (const listener of [...listeners]) listener();
  };
  const setTrouble = (next: StorageTrouble | null): void => {
    if (trouble === next) return;
    trouble = next;
    tell();
  };
  const closed = (why: StorageTrouble): void => {
    base = null;
    setTrouble(why);
  };
  const failed = (error: unknown): void => setTrouble(isFull(error) ? 'full' : 'failing');
  /** A signed run whose open record is still there, because the database has not taken the signed one, is not open. */
  const isSigned = (openId: string): boolean => [...unsavedKept.values()].some((waiting) => waiting.openId === openId);
  const serialHere = (): number => Math.max(0, ...[...kept.values()].map((run) => run.serial)) + 1;

  /** Takes over what the database says; what it has not taken stands beside it. */
  const lookAgain = async (): Promise<void> => {
    if (base === null) return;
    try {
      const index = await base.index();
      for (const map of [heads, kept, asides]) map.clear();
      for (const head of index.heads) heads.set(head.runId, head);
      for (const run of index.kept) kept.set(run.runId, run);
      for (const one of index.asides) asides.set(one.id, one);
    } catch (error) {
      failed(error);
    }
    addUnsaved();
    tell();
  };
  const addUnsaved = (): void => {
    for (const run of unsavedOpen.values()) heads.set(run.runId, headOf(run, now()));
    for (const { run } of unsavedKept.values()) kept.set(run.runId, { ...run, serial: serialHere() });
    for (const one of unsavedAsides.values()) asides.set(one.id, one);
  };

  /** Each copy stays in the boat until it stands in the database. */
  const takeUpCopies = async (read: typeof import('./leftCopies.ts').readLeftCopy): Promise<void> => {
    for (const copy of boat.find()) {
      try {
        if (base !== null) {
          await base.stow(copy);
          boat.clear(copy.key);
          continue;
        }
      } catch (error) {
        failed(error);
      }
      const { run, savedAtMs, aside } = read(copy, newId);
      if (run !== null) {
        unsavedOpen.set(run.runId, run);
        // Under its run's own name it is found again when the run is over.
        if (copy.key !== boat.keyOf(run.runId) && boat.put(run, savedAtMs)) boat.clear(copy.key);
      }
      if (aside !== null) unsavedAsides.set(aside.id, aside);
    }
  };
  const start = async (): Promise<void> => {
    try {
      // Checking what comes back takes much code, which the first page need not wait for.
      const { openStoreDatabase, readLeftCopy } = await import('./storeDatabase.ts');
      try {
        base = await openStoreDatabase({
          name: parts.name,
          now,
          newId,
          waiting: () => setTrouble('waiting'),
          outdated: () => closed('outdated'),
          lost: () => closed('memoryOnly'),
        });
        setTrouble(null);
      } catch (error) {
        setTrouble(isFull(error) ? 'full' : 'memoryOnly');
      }
      await takeUpCopies(readLeftCopy);
    } catch {
      closed('memoryOnly');
    }
    addUnsaved();
    await lookAgain();
    isReady = true;
    tell();
  };
  const ready = start();
  channel?.listen((message) => {
    if (message === CHANGED) void ready.then(lookAgain);
  });

  /** What the job gave once it stands in the database; null: it does not. */
  const attempt = async <T>(job: (base: StoreDatabase) => Promise<T>): Promise<T | null> => {
    await ready;
    if (base === null) return null;
    let done: T;
    try {
      done = await job(base);
    } catch (error) {
      failed(error);
      return null;
    }
    if (trouble === 'full' || trouble === 'failing') setTrouble(null);
    if (!tryingAgain && unsavedKept.size + unsavedAsides.size > 0) void storeAgain();
    return done;
  };
  const write = async (job: (base: StoreDatabase) => Promise<void>): Promise<boolean> =>
    (await attempt((there) => job(there).then(() => true))) ?? false;

  /** Sets something aside in memory; the database is asked later. */
  const hold = (one: Aside): void => {
    asides.set(one.id, one);
    unsavedAsides.set(one.id, one);
  };
  const saveOpen = async (run: OpenRun): Promise<boolean> => {
    const savedAtMs = now();
    const isNew = !heads.has(run.runId);
    heads.set(run.runId, headOf(run, savedAtMs));
    unsavedOpen.set(run.runId, run);
    if (isNew) tell();
    const stored = await write((there) => there.putOpen(run, savedAtMs));
    // A later state may be on its way already.
    if (stored && unsavedOpen.get(run.runId) === run) unsavedOpen.delete(run.runId);
    if (stored && isNew) channel?.post(CHANGED);
    return stored;
  };

  /** Gives the name under which it stands in the database; null: it does not. A run on its way there is not sent twice. */
  const storeKept = (runId: string): Promise<string | null> => {
    const waiting = unsavedKept.get(runId);
    if (waiting === undefined) return Promise.resolve(runId);
    const going = onTheirWay.get(runId) ?? sendKept(runId, waiting).finally(() => onTheirWay.delete(runId));
    onTheirWay.set(runId, going);
    return going;
  };
  const onTheirWay = new Map<string, Promise<string | null>>();
  const sendKept = async (runId: string, waiting: Waiting): Promise<string | null> => {
    const { run, text, openId } = waiting;
    const taken = await attempt((there) => there.keep(run, text, openId));
    if (taken === null) return null;
    unsavedKept.delete(runId);
    unsavedOpen.delete(openId);
    heads.delete(openId);
    kept.delete(runId);
    kept.set(taken.runId, taken);
    boat.clear(boat.keyOf(openId));
    channel?.post(CHANGED);
    if (taken.runId !== runId) await lookAgain();
    tell();
    return taken.runId;
  };

  const storeAgain = async (): Promise<boolean> => {
    tryingAgain = true;
    for (const runId of [...unsavedKept.keys()]) await storeKept(runId);
    for (const run of [...unsavedOpen.values()]) await saveOpen(run);
    for (const one of [...unsavedAsides.values()]) {
      if (await write((there) => there.setAside(one, null))) unsavedAsides.delete(one.id);
    }
    tryingAgain = false;
    return unsavedKept.size + unsavedOpen.size + unsavedAsides.size === 0;
  };

  return {
    ready,
    isReady: () => isReady,
    trouble: () => trouble,
    openRuns() {
      const shown = new Map<string, OpenHead>();
      for (const head of heads.values()) {
        if (isSigned(head.runId)) continue;
        const other = shown.get(head.scenarioId);
        if (other === undefined || other.savedAtMs <= head.savedAtMs) shown.set(head.scenarioId, head);
      }
      return [...shown.values()];
    },
    keptRuns: () => [...kept.values()].sort((a, b) => a.serial - b.serial),
    asides: () => [...asides.values()],
    async readOpen(scenarioId) {
      await ready;
      const here = (run: OpenRun): boolean => run.scenarioId === scenarioId && !isSigned(run.runId);
      const own = [...unsavedOpen.values()].filter(here).at(-1);
      const stored = (await attempt((there) => there.openRuns(scenarioId)))?.find(({ run }) => here(run)) ?? null;
      await lookAgain();
      if (own === undefined) return stored;
      // Another tab may have gone on with the run since this one failed to write it.
      const goneOn = stored?.run.runId === own.runId && stored.run.elapsedMs > own.elapsedMs;
      if (!goneOn) return { run: own, recorded: own.events.length, text: null };
      unsavedOpen.delete(own.runId);
      hold({ id: newId(), reason: 'putAside', scenarioId, text: JSON.stringify(own, null, 1) });
      return stored;
    },
    async readText(runId) {
      await ready;
      const waiting = unsavedKept.get(runId);
      if (waiting !== undefined) return waiting.text;
      return attempt((there) => there.text(runId));
    },
    saveOpen,
    saveLast(run) {
      boat.put(run, now());
      void saveOpen(run).then((stored) => {
        if (stored) boat.clear(boat.keyOf(run.runId));
      });
    },
    async dropOpen(runId) {
      heads.delete(runId);
      unsavedOpen.delete(runId);
      tell();
      const dropped = await write((there) => there.dropOpen(runId));
      // Without a database the boat is all there is, and this run is wanted no more.
      if (dropped || base === null) boat.clear(boat.keyOf(runId));
      if (dropped) channel?.post(CHANGED);
    },
    async keep(run, text) {
      await ready;
      const runId = kept.has(run.runId) ? newId() : run.runId;
      unsavedKept.set(runId, { run: { ...run, runId }, text, openId: run.runId });
      kept.set(runId, { ...run, runId, serial: serialHere() });
      tell();
      return (await storeKept(runId)) ?? runId;
    },
    isStored: (runId) => !unsavedKept.has(runId),
    storeAgain,
    async fillLines(runId, lines) {
      const run = kept.get(runId);
      if (run === undefined || unsavedKept.has(runId) || !run.lines.some((line) => line.max === null)) return;
      const filled = { ...run, lines };
      if (await write((there) => there.putKept(filled))) kept.set(runId, filled);
    },
    async setAside(what, { runId, run }) {
      const one: Aside = { ...what, id: newId() };
      hold(one);
      unsavedOpen.delete(runId);
      if (run === null) heads.delete(runId);
      const stored = await write((there) => there.setAside(one, { runId, run }));
      if (stored) {
        unsavedAsides.delete(one.id);
        boat.clear(boat.keyOf(runId));
      } else if (run !== null) unsavedOpen.set(runId, run);
      tell();
    },
    async dropAside(id) {
      asides.delete(id);
      unsavedAsides.delete(id);
      tell();
      await write((there) => there.dropAside(id));
    },
    async everything() {
      await ready;
      const stored = await base?.everything().catch(() => null);
      const { anyText } = await import('./storeDatabase.ts');
      const memory = [unsavedOpen, unsavedKept, unsavedAsides].map((map) => [...map.values()]);
      return anyText({ format: 'haystack-logbook', version: 1, stored: stored ?? null, memory });
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}

function headOf({ runId, scenarioId, elapsedMs, turns }: OpenRun, savedAtMs: number): OpenHead {
  return { runId, scenarioId, elapsedMs, turns, savedAtMs };
}

function isFull(error: unknown): boolean {
  return typeof error === 'object' && error !== null && (error as { name?: unknown }).name === 'QuotaExceededError';
}

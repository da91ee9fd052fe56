/**
 * Opens the logbook: IndexedDB on this machine only. It is there at once and empty; `ready` says when what is stored has been read. Where storage is blocked,
 * full or broken, everything goes on in memory and `trouble` says so. Nothing leaves the database before what replaces it stands there.
 */
import type { Aside, OpenRun } from './keptRuns.ts';
import { type BoatStorage, createLifeboat } from './lifeboat.ts';
import type { Logbook, StorageTrouble } from './logbook.ts';
import { createShelfMemory, type Waiting } from './shelfMemory.ts';
import type { StoreDatabase } from './storeDatabase.ts';
import type { TabChannel } from './tabChannel.ts';

export interface LogbookGiven {
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

export function openLogbook(given: LogbookGiven): Logbook {
  const { now, newId, channel } = given;
  const boat = createLifeboat(given.name, given.storage);
  const memory = createShelfMemory(now);
  const { heads, kept, asides, unsavedOpen, unsavedKept, unsavedAsides } = memory;
  const onTheirWay = new Map<string, Promise<string | null>>();
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

  const lookAgain = async (): Promise<void> => {
    if (base === null) return;
    try {
      memory.show(await base.index());
    } catch (error) {
      failed(error);
    }
    tell();
  };

  /** Each copy stays in the boat until it stands in the database. */
  const takeUpCopies = async (read: typeof import('./leftCopies.ts').readLeftCopy): Promise<void> => {
    for (const copy of boat.find()) {
      try {
        if (base !== null) {
          await base.stow(copy);
          boat.clear(copy.key, copy.text);
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
          name: given.name,
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
    memory.addUnsaved();
    await lookAgain();
    isReady = true;
    tell();
  };
  const ready = start();
  channel?.listen((message) => {
    if (message === CHANGED) void ready.then(lookAgain);
  });

  /** What the database gave; null: nothing, and why is told. */
  const ask = async <T>(job: (base: StoreDatabase) => Promise<T>): Promise<T | null> => {
    await ready;
    if (base === null) return null;
    try {
      return await job(base);
    } catch (error) {
      failed(error);
      return null;
    }
  };
  /** What the job gave once it stands in the database; null: it does not. Where one write goes through, what waits is tried again. */
  const write = async <T>(job: (base: StoreDatabase) => Promise<T>): Promise<T | null> => {
    const done = await ask(job);
    if (done === null) return null;
    if (trouble === 'full' || trouble === 'failing') setTrouble(null);
    if (!tryingAgain && unsavedKept.size + unsavedAsides.size > 0) void storeAgain();
    return done;
  };
  const stands = async (job: (base: StoreDatabase) => Promise<void>): Promise<boolean> =>
    (await write((there) => job(there).then(() => true))) ?? false;

  const saveOpen = async (run: OpenRun): Promise<boolean> => {
    const savedAtMs = now();
    const isNew = !heads.has(run.runId);
    memory.putOpen(run, savedAtMs);
    if (isNew) tell();
    const stored = await stands((there) => there.putOpen(run, savedAtMs));
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
  const sendKept = async (runId: string, waiting: Waiting): Promise<string | null> => {
    const { run, text, openId } = waiting;
    const taken = await write((there) => there.keep(run, text, openId));
    if (taken === null) return null;
    unsavedKept.delete(runId);
    memory.forgetOpen(openId);
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
    for (const runId of [...unsavedOpen.keys()]) {
      // The bench may have gone on meanwhile: what is written is how the run stands now.
      const run = unsavedOpen.get(runId);
      if (run !== undefined) await saveOpen(run);
    }
    for (const one of [...unsavedAsides.values()]) {
      if (await stands((there) => there.setAside(one, null))) unsavedAsides.delete(one.id);
    }
    tryingAgain = false;
    return memory.isAllSaved();
  };

  return {
    ready,
    isReady: () => isReady,
    trouble: () => trouble,
    openRuns: () => memory.openRuns(),
    keptRuns: () => memory.keptRuns(),
    asides: () => [...asides.values()],
    async readOpen(scenarioId) {
      await ready;
      const own = memory.unsavedOf(scenarioId);
      const found = await ask((there) => there.openRuns(scenarioId));
      const stored = found?.find(({ run }) => !memory.isSigned(run.runId)) ?? null;
      await lookAgain();
      if (own === undefined) return stored;
      // Another tab may have gone on with the run since this one failed to write it.
      const goneOn = stored?.run.runId === own.runId && stored.run.elapsedMs > own.elapsedMs;
      if (!goneOn) return { run: own, recorded: own.events.length, text: null };
      unsavedOpen.delete(own.runId);
      memory.putAside({ id: newId(), reason: 'putAside', scenarioId, text: JSON.stringify(own, null, 1) });
      return stored;
    },
    async readText(runId) {
      await ready;
      const waiting = unsavedKept.get(runId);
      if (waiting !== undefined) return waiting.text;
      return ask((there) => there.text(runId));
    },
    saveOpen,
    saveLast(run) {
      boat.put(run, now());
      void saveOpen(run).then((stored) => {
        if (stored) boat.clear(boat.keyOf(run.runId));
      });
    },
    async dropOpen(runId) {
      memory.forgetOpen(runId);
      tell();
      const dropped = await stands((there) => there.dropOpen(runId));
      // Without a database the lifeboat is all there is, and this run is no longer wanted.
      if (dropped || base === null) boat.clear(boat.keyOf(runId));
      if (dropped) channel?.post(CHANGED);
    },
    async keep(run, text) {
      await ready;
      const runId = kept.has(run.runId) ? newId() : run.runId;
      memory.putKept({ run: { ...run, runId }, text, openId: run.runId });
      tell();
      return (await storeKept(runId)) ?? runId;
    },
    isStored: (runId) => !unsavedKept.has(runId),
    storeAgain,
    async fillLines(runId, lines) {
      const run = kept.get(runId);
      if (run === undefined || unsavedKept.has(runId) || !run.lines.some((line) => line.max === null)) return;
      const filled = { ...run, lines };
      if (await stands((there) => there.putKept(filled))) kept.set(runId, filled);
    },
    async setAside(what, { runId, run }) {
      const one: Aside = { ...what, id: newId() };
      memory.putAside(one);
      if (run === null) memory.forgetOpen(runId);
      else unsavedOpen.delete(runId);
      const stored = await stands((there) => there.setAside(one, { runId, run }));
      if (stored) {
        unsavedAsides.delete(one.id);
        boat.clear(boat.keyOf(runId));
      } else if (run !== null && !unsavedOpen.has(runId)) unsavedOpen.set(runId, run);
      tell();
    },
    async dropAside(id) {
      asides.delete(id);
      unsavedAsides.delete(id);
      tell();
      await stands((there) => there.dropAside(id));
    },
    async everything() {
      await ready;
      const stored = await base?.everything().catch(() => null);
      const { anyText } = await import('./storeDatabase.ts');
      const inMemory = [unsavedOpen, unsavedKept, unsavedAsides].map((map) => [...map.values()]);
      return anyText({ format: 'haystack-logbook', version: 1, stored: stored ?? null, memory: inMemory });
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}

function isFull(error: unknown): boolean {
  return typeof error === 'object' && error !== null && (error as { name?: unknown }).name === 'QuotaExceededError';
}

/** What the logbook shows: what the database said last, and beside it what the database has not taken yet. That lives in memory and is tried again. */
import type { Aside, FreshRun, KeptRun, OpenHead, OpenRun } from './keptRuns.ts';
import type { Index } from './shelfReading.ts';

/** A signed run that the database has not taken yet, and the open run that it was. */
export interface Waiting {
  readonly run: FreshRun;
  readonly text: string;
  readonly openId: string;
}

export function createShelfMemory(now: () => number) {
  const heads = new Map<string, OpenHead>();
  const kept = new Map<string, KeptRun>();
  const asides = new Map<string, Aside>();
  const unsavedOpen = new Map<string, OpenRun>();
  const unsavedKept = new Map<string, Waiting>();
  const unsavedAsides = new Map<string, Aside>();

  /** A signed run whose open record is still there, because the database has not taken the signed one, is not open. */
  const isSigned = (openId: string): boolean => [...unsavedKept.values()].some((waiting) => waiting.openId === openId);
  const nextSerial = (): number => Math.max(0, ...[...kept.values()].map((run) => run.serial)) + 1;
  const addUnsaved = (): void => {
    for (const run of unsavedOpen.values()) heads.set(run.runId, headOf(run, now()));
    for (const { run } of unsavedKept.values()) kept.set(run.runId, { ...run, serial: nextSerial() });
    for (const one of unsavedAsides.values()) asides.set(one.id, one);
  };
  return {
    heads,
    kept,
    asides,
    unsavedOpen,
    unsavedKept,
    unsavedAsides,
    isSigned,
    addUnsaved,
    /** takes over what the database says */
    show(index: Index): void {
      for (const map of [heads, kept, asides]) map.clear();
      for (const head of index.heads) heads.set(head.runId, head);
      for (const run of index.kept) kept.set(run.runId, run);
      for (const one of index.asides) asides.set(one.id, one);
      addUnsaved();
    },
    putOpen(run: OpenRun, savedAtMs: number): void {
      heads.set(run.runId, headOf(run, savedAtMs));
      unsavedOpen.set(run.runId, run);
    },
    forgetOpen(runId: string): void {
      heads.delete(runId);
      unsavedOpen.delete(runId);
    },
    putKept(waiting: Waiting): void {
      const { run } = waiting;
      unsavedKept.set(run.runId, waiting);
      kept.set(run.runId, { ...run, serial: nextSerial() });
    },
    putAside(one: Aside): void {
      asides.set(one.id, one);
      unsavedAsides.set(one.id, one);
    },
    /** the last written of a scenario's open runs that is in memory only */
    unsavedOf: (scenarioId: string): OpenRun | undefined =>
      [...unsavedOpen.values()].filter((run) => run.scenarioId === scenarioId && !isSigned(run.runId)).at(-1),
    isAllSaved: (): boolean => unsavedOpen.size + unsavedKept.size + unsavedAsides.size === 0,
    /** of each scenario the run that was written last */
    openRuns(): readonly OpenHead[] {
      const shown = new Map<string, OpenHead>();
      for (const head of heads.values()) {
        if (isSigned(head.runId)) continue;
        const other = shown.get(head.scenarioId);
        if (other === undefined || other.savedAtMs <= head.savedAtMs) shown.set(head.scenarioId, head);
      }
      return [...shown.values()];
    },
    keptRuns: (): readonly KeptRun[] => [...kept.values()].sort((a, b) => a.serial - b.serial),
  };
}

function headOf({ runId, scenarioId, elapsedMs, turns }: OpenRun, savedAtMs: number): OpenHead {
  return { runId, scenarioId, elapsedMs, turns, savedAtMs };
}

/** The logbook as everybody may read it: without the runs of an exam that tells what they were worth only when it is handed in. */
import { heldBack } from '../services/handing/examDesk.ts';
import type { KeptRun } from '../services/store/keptRuns.ts';
import type { Logbook } from '../services/store/logbook.ts';
import type { OwnShelf } from '../services/store/ownShelf.ts';

export function toldLogbook(logbook: Logbook, shelf: Pick<OwnShelf, 'ready' | 'exams' | 'subscribe'>): Logbook {
  const NOTHING: readonly KeptRun[] = [];
  let shelfRead = false;
  const read = async (): Promise<void> => {
    await shelf.ready;
    shelfRead = true;
    await logbook.ready;
  };
  const ready = read();
  /** the same list as long as nothing changes */
  let last: { readonly kept: readonly KeptRun[]; readonly held: string; readonly told: readonly KeptRun[] } | null =
    null;
  const keptRuns = (): readonly KeptRun[] => {
    // Before the shelf is read nobody knows whether an exam is going on.
    if (!shelfRead) return NOTHING;
    const kept = logbook.keptRuns();
    const held = heldBack(shelf.exams(), kept);
    if (held.size === 0) return kept;
    const names = [...held].join();
    if (last?.kept !== kept || last.held !== names)
      last = { kept, held: names, told: kept.filter(({ runId }) => !held.has(runId)) };
    return last.told;
  };
  return {
    ...logbook,
    ready,
    isReady: () => shelfRead && logbook.isReady(),
    keptRuns,
    readText: async (runId) => {
      await ready;
      return heldBack(shelf.exams(), logbook.keptRuns()).has(runId) ? null : logbook.readText(runId);
    },
    subscribe(listener) {
      const stops = [logbook.subscribe(listener), shelf.subscribe(listener)];
      // A shelf that holds nothing tells nobody that it has been read.
      let here = true;
      if (!shelfRead) void ready.then(() => here && listener());
      return () => {
        here = false;
        for (const stop of stops) stop();
      };
    },
  };
}

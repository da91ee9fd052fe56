/** Dealing ahead, as the page does it: with its chance, its workers and its timers, and with what logbook and shelf say of a job. */
import { MOST_SEED } from '../scenario/attempt.ts';
import { goingOn } from '../services/handing/examDesk.ts';
import { createDealsAhead, type DealsAhead } from '../services/library/dealsAhead.ts';
import type { Library } from '../services/library/library.ts';
import type { Logbook } from '../services/store/logbook.ts';
import type { OwnShelf } from '../services/store/ownShelf.ts';
import { after } from './after.ts';
import type { Language } from './language.ts';

export interface PageDealsAheadGiven {
  readonly library: Library;
  readonly own: Pick<OwnShelf, 'ready' | 'exams'>;
  readonly logbook: Pick<Logbook, 'ready' | 'openRuns'>;
  readonly language: Pick<Language, 'all'>;
}

export function pageDealsAhead({ library, own, logbook, language }: PageDealsAheadGiven): DealsAhead {
  const isSealed = (id: string): boolean => library.entries().find((entry) => entry.id === id)?.sealed === true;
  const hasWorkers = typeof Worker !== 'undefined';
  return createDealsAhead({
    setup: library.setup,
    tools: hasWorkers ? async () => (await import('../services/library/dealingTools.ts')).dealingTools : null,
    wake() {
      if (hasWorkers) import('../services/jobs/pageWorkers.ts').then(({ pageJobs }) => pageJobs().wake(), inVain);
    },
    isSame: async (one, other) => (await import('../services/library/sameDeal.ts')).sameDeal(one, other),
    freshNumber,
    isSealed,
    async isFree(id) {
      await Promise.all([own.ready, logbook.ready]);
      if (logbook.openRuns().some((run) => run.scenarioId === id)) return false;
      return !(goingOn(own.exams())?.opened.scenarios.includes(id) ?? false);
    },
    fetchRoom() {
      Promise.all([import('./BenchRoom.tsx'), language.all()])
        .then(() =>
          Promise.all([import('../rooms/bench/scene/chassisCanvas.ts'), import('../rooms/bench/scene/leadCanvas.ts')]),
        )
        .catch(inVain);
    },
    isVisible: () => document.visibilityState === 'visible',
    after,
  });
}

/** What cannot be fetched now is asked for again by whoever opens the job. */
const inVain = (): void => {};

/** The number of a new attempt. Chance, and so the page's own business. */
function freshNumber(): number {
  return crypto.getRandomValues(new Uint32Array(1))[0]! & MOST_SEED;
}

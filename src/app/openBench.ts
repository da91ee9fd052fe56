/** Puts a run on the bench: one that lay open, as far as it can be followed, or a new one. What happens to it in the end goes to the logbook. */
import type { BenchSetup } from '../bench/setup.ts';
import { claimOf } from '../grading/grade.ts';
import { pageFrames } from '../kit/frameLoop.ts';
import type { Run } from '../run/runLog.ts';
import { serialiseRunFile, toRunFile } from '../run/serialise.ts';
import { beside } from '../services/jobs/pageJobs.ts';
import type { SoundDesk } from '../services/sound/soundDesk.ts';
import { freshId } from '../services/store/freshId.ts';
import { entryOfReport } from '../services/store/indexEntry.ts';
import type { LearnerMemory } from '../services/store/learnerMemory.ts';
import type { Logbook } from '../services/store/logbook.ts';
import type { ReadOpen } from '../services/store/records.ts';
import { type BenchStore, createBenchStore } from './benchStore.ts';
import { ownSetUp } from './madeReady.ts';
import type { Route } from './routes.ts';
import { fileOfOpen, takeUp } from './takeUp.ts';

export interface OpenBenchGiven {
  readonly logbook: Logbook;
  readonly learner: Pick<LearnerMemory, 'read'>;
  readonly open: ReadOpen | null;
  /** the bench with the open run's own scenario; null where its receiver is not here */
  readonly recorded: BenchSetup | null;
  /** the bench with the scenario as it is today */
  readonly shipped: BenchSetup;
  /** elapsed time at which the run is over; null: none but the scenario's own */
  readonly endsAtMs: number | null;
  /** where the page goes when the run is kept */
  readonly after: (runId: string) => Route;
  readonly desk: Pick<SoundDesk, 'play'>;
  readonly go: (route: Route) => void;
  readonly failed: (error: unknown) => void;
}

export interface OpenedBench {
  readonly store: BenchStore;
  /** sets the record aside where it could not be taken up whole */
  putAside(): Promise<void>;
}

export function openBench({
  logbook,
  learner,
  open,
  recorded,
  shipped,
  endsAtMs,
  after,
  desk,
  go,
  failed,
}: OpenBenchGiven): OpenedBench {
  const up = open === null ? null : takeUp(recorded, open);
  const taken = up?.taken ?? null;
  const setup = taken?.run.setup ?? shipped;
  const scenarioId = setup.scenario.id;
  const runId = taken === null || open === null ? freshId() : open.run.runId;

  const keep = async (worked: Run): Promise<void> => {
    // Whoever has read the report of an attempt knows its answers: signed again, from a tab that could not hear of the first signature, it counts for nothing.
    if (setup.scenario.sealed && (await logbook.readText(runId)) !== null) {
      await logbook.dropOpen(runId);
      go(after(runId));
      return;
    }
    const now = new Date();
    const run = { ...worked, learner: learner.read() };
    const report = await beside('grade', { setup, events: run.events });
    const text = serialiseRunFile(toRunFile(run, claimOf(report), { day: dayOf(now), runId }));
    const of = { scenario: setup.scenario, learner: run.learner };
    const entry = entryOfReport(runId, of, report, now.getTime(), ownSetUp(setup, worked.state, report));
    go(after(await logbook.keep(entry, text)));
  };
  const store = createBenchStore(
    {
      setup,
      runId,
      endsAtMs,
      loop: pageFrames,
      now: () => performance.now(),
      after: (milliseconds, callback) => setTimeout(callback, milliseconds),
      wantsNoMotion: () => matchMedia('(prefers-reduced-motion: reduce)').matches,
      save: (run) => logbook.saveOpen(run),
      saveLast: (run) => logbook.saveLast(run),
      heard: (sounds) => {
        for (const each of sounds) desk.play(each);
      },
      finished: (run) => void keep(run).catch(failed),
      left: () => {
        void logbook.dropOpen(runId);
        go({ page: 'course' });
      },
    },
    taken,
  );

  return {
    store,
    async putAside() {
      if (open === null || up === null || up.aside === null) return;
      const text = open.text ?? fileOfOpen(recorded, open.run);
      const instead =
        taken === null ? null : { ...open.run, events: taken.run.events, turns: taken.run.state.turnsMade };
      await logbook.setAside({ reason: up.aside, scenarioId, text }, { runId: open.run.runId, run: instead });
    },
  };
}

/** The calendar day where the learner is: `2026-05-31`. */
export function dayOf(now: Date): string {
  const two = (figure: number): string => `${figure}`.padStart(2, '0');
  return `${`${now.getFullYear()}`.padStart(4, '0')}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

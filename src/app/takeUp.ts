/** Takes up a run that lay open, as far as the bench of today can follow it. What it cannot follow is handed back, to be set aside whole. */
import type { BenchSetup } from '../bench/setup.ts';
import { checkScenario } from '../files/checkScenario.ts';
import { createRun, resumeRun } from '../run/runLog.ts';
import { serialiseRunFile, toRunFile } from '../run/serialise.ts';
import type { AsideReason, OpenRun } from '../services/store/keptRuns.ts';
import type { ReadOpen } from '../services/store/records.ts';
import type { TakenUp } from './benchStore.ts';

export interface TakeUp {
  /** null: nothing of it can be followed */
  readonly taken: TakenUp | null;
  /** why the record is to be set aside; null: all of it was taken up */
  readonly aside: Extract<AsideReason, 'stopsShort' | 'doesNotStart'> | null;
}

/** `setup`: the bench with the scenario of the run in it; null where its receiver is not here. */
export function takeUp(setup: BenchSetup | null, { run: open, recorded }: ReadOpen): TakeUp {
  const run = setup === null ? null : resumed(setup, open);
  if (run === null || (run.events.length === 0 && recorded > 0)) return { taken: null, aside: 'doesNotStart' };
  const taken = { run, elapsedMs: open.elapsedMs, session: open.session };
  return { taken, aside: run.events.length < recorded ? 'stopsShort' : null };
}

function resumed(setup: BenchSetup, { events, learner }: OpenRun): TakenUp['run'] | null {
  if (checkScenario(setup.scenario, setup).length > 0) return null;
  try {
    return resumeRun(setup, learner, events).run;
  } catch {
    // A scenario can fit every rule and still ask for what no bench can do; that costs this run, not the page.
    return null;
  }
}

/** The whole record as a run file, or as it stands where it cannot be one. */
export function fileOfOpen(setup: BenchSetup | null, open: OpenRun): string {
  // A sealed run that is not signed yet says no more in a file than in storage.
  if (setup === null || open.scenario === null) return JSON.stringify(open, null, 1);
  const run = { ...createRun(setup, open.learner), events: open.events };
  return serialiseRunFile(toRunFile(run, null));
}

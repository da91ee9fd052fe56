/** Runs made through the log itself, for the tests of replay, file and verdict. */
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import type { RunFile } from '../../src/files/runFile.ts';
import { claimOf, grade } from '../../src/grading/grade.ts';
import { appendEvent, createRun, type Run } from '../../src/run/runLog.ts';
import { toRunFile } from '../../src/run/serialise.ts';
import type { KnownBench, Recompute } from '../../src/run/verify.ts';
import { wholeJob } from '../session/acts.ts';

export function runOf(setup: BenchSetup, acts: readonly BenchEvent[], stepMs = 700): Run {
  let run = createRun(setup, 'Ines of the harbour');
  acts.forEach((act, i) => {
    const appended = appendEvent(run, act, i * stepMs);
    if (!appended.ok) throw new Error(`${appended.reason}: ${JSON.stringify(act)}`);
    run = appended.run;
  });
  return run;
}

export function finishedFile(setup: BenchSetup): RunFile {
  const run = runOf(setup, wholeJob(setup));
  return toRunFile(run, claimOf(grade(setup, run.events)));
}

export const recompute: Recompute = (setup, events) => claimOf(grade(setup, events));

export function knownBench({ receiver, deck }: BenchSetup, scenarioHash: string | null = null): KnownBench {
  return { receiver, deck, scenarioHash };
}

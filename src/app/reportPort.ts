/** Feeds the report page from a run file and what has been made of it: the score is computed anew, never read from the file. */

import { type Bench, createBench } from '../bench/bench.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { tubeReadings } from '../bench/tubeReadings.ts';
import { findingsOf } from '../bench/witness.ts';
import type { RunFile } from '../files/runFile.ts';
import type { Approach, ReadingsKept, ReportPort, ShownBeside } from '../present/ports.ts';
import { createReplayer, type Replayer } from '../run/replay.ts';
import type { GradedRun } from '../services/jobs/jobTable.ts';
import { sessionViewAt } from '../session/session.ts';
import { createBenchMoment } from './benchMoment.ts';

export interface ReportActs {
  readonly exportRun: () => void;
  readonly save: ReportPort['save'];
  readonly beside?: ShownBeside;
  readonly again: () => void;
  readonly againApproach?: Approach;
  readonly toCourse: () => void;
}

export function createReportPort(
  setup: BenchSetup,
  run: RunFile,
  { report, blind }: GradedRun,
  previousBest: number | null,
  acts: ReportActs,
): ReportPort {
  const replayer = createReplayer(setup, run.events);
  const bench = createBench(setup);
  let nowMs = 0;
  const moment = createBenchMoment(setup, () => nowMs);
  const lastTurnMs = run.events.findLast(({ type }) => type === 'slugTurned')?.atMs ?? 0;
  return {
    report,
    blind,
    run,
    receiver: setup.receiver,
    readings: readingsKept(setup, replayer, bench),
    previousBest,
    at(seconds) {
      nowMs = seconds * 1000;
      const stood = replayer.at(seconds);
      const state = moment.of(stood);
      const session = sessionViewAt(
        setup,
        bench.facts(state),
        seconds,
        seconds * 1000 >= lastTurnMs,
        findingsOf(setup, stood),
      );
      return { state, display: bench.display(state), session };
    },
    ...acts,
  };
}

/** What stood on the tube at the end is read only for the curve that the bench then stood for. */
function readingsKept(setup: BenchSetup, replayer: Replayer, bench: Bench): readonly ReadingsKept[] {
  const end = replayer.at(Number.POSITIVE_INFINITY);
  return Object.entries(end.asFound).map(([response, found]) => ({
    response,
    found: tubeReadings(setup, found, response),
    left: bench.facts(end).response === response ? tubeReadings(setup, end, response) : null,
  }));
}

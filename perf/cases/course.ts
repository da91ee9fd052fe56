/** Certificates of scenarios on the nine-slug strip and on the largest receivers; a run of one hour graded, and judged from its file as `regrade` does. */

import { problemLine } from '../../src/base/result.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { designOf } from '../../src/bench/setup.ts';
import { certifyScenario } from '../../src/certify/certifyScenario.ts';
import { readRunFile } from '../../src/files/runFileSchema.ts';
import { claimOf, grade } from '../../src/grading/grade.ts';
import { appendEvent, createRun, type Run } from '../../src/run/runLog.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { verifyRun } from '../../src/run/verify.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { setupOf } from '../../tests/technician/oneScenario.ts';
import type { PerfCase } from '../case.ts';
import { timed } from '../case.ts';

/** All nine slugs of the valve strip astray. */
const NINE = 'from-cold';
const HOUR_MS = 3_600_000;

const certified = (id: string): PerfCase => ({
  id: `certify-${id}`,
  title: `certificate of ${id}`,
  measure() {
    const setup = setupOf(id);
    let sum = 0;
    const run = () => {
      const outcome = certifyScenario(setup);
      if (!outcome.ok) throw new Error(`${id} cannot be certified`);
      sum = outcome.certificate.difficulty + outcome.certificate.par.turns;
    };
    return timed({ warmUp: 2, runs: 7, run, checksum: () => sum });
  },
});

/** Made once. The technician's run with slow turning to and fro in it, ten acts a second, signed off after one hour. */
let hour: Run | null = null;

function hourLong(): Run {
  if (hour !== null) return hour;
  const setup = setupOf(NINE);
  const short = demonstrate(setup).events;
  let run = createRun(setup, 'a patient hand');
  const act = ({ atMs, ...event }: BenchEvent & { readonly atMs: number }): void => {
    const appended = appendEvent(run, event as BenchEvent, atMs);
    if (!appended.ok) throw new Error(`${appended.reason}: ${event.type} at ${atMs} ms`);
    run = appended.run;
  };
  // However long the technician takes, half of the hour is somebody turning to and fro; it is signed off at its end.
  const worked = short.filter(({ atMs, type }) => atMs < HOUR_MS / 2 && type !== 'signedOff');
  for (const event of worked) act(event);
  const turn = worked.findLast((event) => event.type === 'slugTurned');
  if (turn?.type !== 'slugTurned') throw new Error('the technician turned nothing');
  const from = worked.at(-1)!.atMs;
  for (let ms = from, i = 0; ms < HOUR_MS - 60_000; ms += 100, i++) {
    const turns = (Math.floor(i / 8) % 2 === 0 ? 1 : -1) / 64;
    act({ type: 'slugTurned', slug: turn.slug, turns, atMs: Math.round(ms) });
  }
  act({ type: 'signedOff', atMs: HOUR_MS });
  hour = run;
  return hour;
}

export const cases: readonly PerfCase[] = [
  certified(NINE),
  certified('brent-sealed'),
  certified('marram-sealed'),
  certified('antenna-to-diode'),
  certified('colour-sealed'),
  {
    id: 'hour-grade',
    title: 'a run of one hour, graded',
    measure() {
      const { events } = hourLong();
      const setup = setupOf(NINE);
      let total = 0;
      const run = () => {
        total = grade(setup, events).total + events.length / 1e6;
      };
      return timed({ warmUp: 1, runs: 5, run, checksum: () => total });
    },
  },
  {
    id: 'hour-regrade',
    title: 'a run of one hour from its file: read, replayed, graded, compared',
    measure() {
      const run = hourLong();
      const setup = setupOf(NINE);
      const text = serialiseRunFile(toRunFile(run, claimOf(grade(setup, run.events))));
      let verified = 0;
      const judge = () => {
        const file = readRunFile(text, 'hour.json');
        if (!file.ok) throw new Error(problemLine(file.problems[0]!));
        // The sheet's own design is what the file names; the set that it dealt is what the run was done on.
        const bench = { ...designOf(setup), scenarioHash: null };
        const verdict = verifyRun(file.value, bench, (known, events) => claimOf(grade(known, events)), setup);
        if (verdict.kind !== 'verified') throw new Error(`the run is ${verdict.kind}`);
        verified = text.length;
      };
      return timed({ warmUp: 1, runs: 5, run: judge, checksum: () => verified });
    },
  },
];

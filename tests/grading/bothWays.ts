/**
 * Reports that between them earn and lose what there is to earn: the job done as it should be, a bench signed off as found, and the job done but for one thing,
 * for everything that can be set, clipped, turned or replaced otherwise. They come one after the other, for whoever has seen enough stops asking.
 */
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { controlRange } from '../../src/bench/controlRange.ts';
import { type BenchSetup, RESTING_CONTROLS } from '../../src/bench/setup.ts';
import type { Grade } from '../../src/grading/grade.ts';
import type { Report } from '../../src/grading/report.ts';
import { partsTray } from '../../src/receiver/faults/partsTray.ts';
import { appendEvent, createRun } from '../../src/run/runLog.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { wholeJob } from '../session/acts.ts';

const SIGN: BenchEvent = { type: 'signedOff' };
type Acts = readonly BenchEvent[];

export function* reportsBothWays(grade: Grade): Generator<Report> {
  const { scenarios, receivers } = shippedLibrary();
  const setups = scenarios.map((scenario): BenchSetup => ({ ...receivers.get(scenario.receiver)!, scenario }));
  const firsts = [...receivers.keys()].map((id) => setups.find(({ receiver }) => receiver.id === id)!);
  const truthful = setups.find(({ scenario }) => scenario.bench.dialErrorHz === 0)!;
  const video = setups.find(({ receiver }) => receiver.responses[0]!.setUp.source === 'video')!;
  for (const setup of firsts) yield graded(grade, setup, wholeJob(setup));
  const failed = setups.find(({ scenario }) => scenario.faults.length > 0)!;
  yield graded(grade, failed, wholeJob(failed));
  for (const setup of firsts) yield graded(grade, setup, [SIGN]);
  for (const setup of firsts) yield graded(grade, setup, [...unsigned(setup), ...carelessness(setup), SIGN], 5000);
  for (const setup of [video, truthful]) {
    for (const act of settings(setup)) yield graded(grade, setup, [...unsigned(setup), act, SIGN]);
  }
  for (const setup of setups) yield graded(grade, setup, [SIGN]);
}

const jobs = new WeakMap<BenchSetup, Acts>();

function unsigned(setup: BenchSetup): Acts {
  const job = jobs.get(setup) ?? wholeJob(setup).filter((act) => act.type !== 'signedOff');
  jobs.set(setup, job);
  return job;
}

/** What the bench refuses is left out. */
function graded(grade: Grade, setup: BenchSetup, acts: Acts, stepMs = 500): Report {
  let run = createRun(setup, null);
  acts.forEach((act, i) => {
    const appended = appendEvent(run, act, i * stepMs);
    if (appended.ok) run = appended.run;
  });
  return grade(setup, run.events);
}

/** Every slug with every tool, this way and that and past its stops; every part, every lead and every end with the set on; and the set without its transformer. */
function carelessness(setup: BenchSetup): Acts {
  const { receiver, deck } = setup;
  const turns = receiver.adjusters.flatMap(({ id: slug }) =>
    (['hex', 'blade', 'steel'] as const).flatMap((tool): Acts => {
      const way = (by: number): BenchEvent[] => Array(9).fill({ type: 'slugTurned', slug, turns: by });
      return [{ type: 'toolTaken', tool }, ...way(-1.5), ...way(1.5)];
    }),
  );
  return [
    ...turns,
    ...partsTray(receiver, deck).map(({ name }): BenchEvent => ({ type: 'partReplaced', element: name })),
    { type: 'leadRemoved', lead: 'earth' },
    ...receiver.testPoints.map(({ id }): BenchEvent => ({ type: 'leadConnected', lead: 'y', to: id })),
    ...partsTray(receiver, deck).map(({ name }): BenchEvent => ({ type: 'partBridged', element: name })),
    { type: 'leadRemoved', lead: 'biasA' },
    { type: 'toolTaken', tool: 'steel' },
    { type: 'toolPlaced', slug: receiver.adjusters[0]!.id },
    { type: 'isolationSwitched', on: false },
  ];
}

/** Every control that clicks, at each of its settings. */
function settings(setup: BenchSetup): Acts {
  return (Object.keys(RESTING_CONTROLS) as (keyof typeof RESTING_CONTROLS)[]).flatMap((control) => {
    const range = controlRange(setup, control);
    const values = range.kind === 'switch' ? [true, false] : range.kind === 'choice' ? range.choices : [];
    return values.map((value): BenchEvent => ({ type: 'controlSet', control, value }));
  });
}

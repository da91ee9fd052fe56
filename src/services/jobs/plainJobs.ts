/** The jobs that need nothing but their order, so that a page without workers can do them itself. */
import { RULES_VERSION, RULES_VERSIONS } from '../../base/engine.ts';
import type { BenchSetup } from '../../bench/setup.ts';
import { attemptSetup } from '../../certify/attempt.ts';
import { benchSetup } from '../../certify/benchSetup.ts';
import { question } from '../../drills/question.ts';
import { blindTurns } from '../../grading/blindTurns.ts';
import { grade, gradeUnder } from '../../grading/grade.ts';
import { demonstration } from '../../technician/atBench.ts';
import type { JobTable, OnShare, ShownRun } from './jobTable.ts';

export type PlainJob = 'setUp' | 'attempt' | 'grade' | 'report' | 'demonstrate' | 'drill';

export const PLAIN_JOBS: { readonly [N in PlainJob]: (order: JobTable[N]['order']) => JobTable[N]['outcome'] } = {
  setUp: ({ design, scenario }) => benchSetup(design, scenario),
  attempt: ({ design, scenario, attempt }) => attemptSetup(design, scenario, attempt),
  drill: ({ drill, seed, design }) => question(drill, seed, design),
  grade: ({ setup, events }) => grade(setup, events),
  demonstrate: ({ setup }) => shownRun(setup),
  report: ({ setup, events, rules }) => ({
    report: gradeUnder(RULES_VERSIONS.find((version) => version === rules) ?? RULES_VERSION)(setup, events),
    blind: blindTurns(setup, events),
  }),
};

/** Nobody knows how many acts a job will take: the share grows with each, ever more slowly. */
const HALF_WAY_ACTS = 200;

export function shownRun(setup: BenchSetup, onShare: OnShare = () => {}): ShownRun {
  const { run, said } = demonstration(setup, (acts) => onShare(acts / (acts + HALF_WAY_ACTS)));
  return { events: run.events, said, passed: grade(setup, run.events).passed };
}

/** Judges a run file that was handed in: does the run again, grades it anew and says whether its claim holds. The page and the command line both call it. */
import type { Problem, Result } from '../base/result.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { benchSetup } from '../certify/benchSetup.ts';
import { checkScenario } from '../files/checkScenario.ts';
import type { RunFile } from '../files/runFile.ts';
import { readRunFile } from '../files/runFileSchema.ts';
import { claimOf, grade } from '../grading/grade.ts';
import { type KnownBench, type Verdict, verifyRun } from '../run/verify.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** The receiver that the run's scenario names, as it is known here, or why it cannot be had; null = there is none of that name. */
export type FindBench = (scenario: Scenario) => Result<KnownBench> | null;

export interface Judgement {
  readonly verdict: Verdict;
  /** what the file says; null where it could not be read */
  readonly run: RunFile | null;
  /** whether the scenario was held against one that is known here */
  readonly scenarioKnown: boolean;
}

/** From the text of a file; `file` is the name by which problems speak of it. */
export function judgeText(text: string, file: string, find: FindBench): Judgement {
  const read = readRunFile(text, file);
  if (read.ok) return judgeRun(read.value, file, find);
  return unread(foreignFile(read.problems) ?? { kind: 'unreadable', problems: read.problems });
}

/** A run file that has been read already. */
export function judgeRun(run: RunFile, file: string, find: FindBench): Judgement {
  const bench = find(run.scenario);
  if (bench === null) {
    const found = run.scenario.receiver;
    return {
      ...unread({ kind: 'foreign', part: 'receiver', found, wanted: 'a receiver that is here' }),
      run,
    };
  }
  if (!bench.ok) return unread({ kind: 'unreadable', problems: bench.problems });
  const misfits = checkScenario(run.scenario, bench.value, file);
  if (misfits.length > 0) {
    const problems = misfits.map((problem) => ({ ...problem, place: `/scenario${problem.place}` }));
    return unread({ kind: 'unreadable', problems });
  }
  const setup = benchSetup(bench.value, run.scenario, file);
  if (!setup.ok) {
    const problems = setup.problems.map((problem) => ({ ...problem, place: `/scenario${problem.place}` }));
    return unread({ kind: 'unreadable', problems });
  }
  const recompute = (on: BenchSetup, events: RunFile['events']) => claimOf(grade(on, events));
  const verdict = verifyRun(run, bench.value, recompute, setup.value);
  return { verdict, run, scenarioKnown: bench.value.scenarioHash !== null };
}

function unread(verdict: Verdict): Judgement {
  return { verdict, run: null, scenarioKnown: false };
}

/** A file of another kind, or of a newer bench, has one problem: what it says it is. */
function foreignFile(problems: readonly Problem[]): Verdict | null {
  const only = problems.length === 1 ? problems[0]! : null;
  if (only?.place === '/format') return { kind: 'foreign', part: 'format', found: only.found, wanted: only.wanted };
  if (only?.place === '/version') return { kind: 'foreign', part: 'version', found: only.found, wanted: only.wanted };
  return null;
}

/** Judges a run file that was handed in: does the run again, grades it anew and says whether its claim holds. The page and the command line both call it. */
import { RULES_VERSION, RULES_VERSIONS } from '../base/engine.ts';
import { good, type Problem, type Result } from '../base/result.ts';
import type { BenchSetup } from '../bench/setup.ts';
import type { KnownSet } from '../certify/knownSet.ts';
import { checkScenario } from '../files/checkScenario.ts';
import type { ClaimedScore, RunFile } from '../files/runFile.ts';
import { readRunFile } from '../files/runFileSchema.ts';
import { claimOf, gradeUnder } from '../grading/grade.ts';
import type { Report } from '../grading/report.ts';
import { asOfThen } from '../run/earlierSheet.ts';
import { foreignPart, type KnownBench, unsigned, type Verdict, verifyRun } from '../run/verify.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { judgedSetup } from './judgedSetup.ts';

/** What a run is held against, with the set that the scenario's own certificate knows, if it has one. */
export interface FoundBench extends KnownBench {
  readonly known?: KnownSet | null;
}

/** The receiver that the run's scenario names, as it is known here, or why it cannot be had; null = there is none of that name. */
export type FindBench = (scenario: Scenario) => Result<FoundBench> | null;

export interface Judgement {
  readonly verdict: Verdict;
  /** what the file says; null where it could not be read */
  readonly run: RunFile | null;
  /** whether the scenario was held against one that is known here */
  readonly scenarioKnown: boolean;
  /** what a run that was graded by earlier rules earns by those of today, passed only where it was signed off; left out: they are the same, or it was not graded */
  readonly underToday?: ClaimedScore;
  /** the run as graded, under the rules that its claim speaks of; left out: it was not graded */
  readonly report?: Report;
}

/** From the text of a file; `file` is the name by which problems speak of it. */
export function judgeText(text: string, file: string, find: FindBench): Judgement {
  const read = readToJudge(text, file);
  return read.ok ? judgeRun(read.value, file, find) : read.judgement;
}

/** The run of a text, for whoever has to fetch what it is held against; or the judgement on a text that is none. */
export function readToJudge(
  text: string,
  file: string,
): { readonly ok: true; readonly value: RunFile } | { readonly ok: false; readonly judgement: Judgement } {
  const read = readRunFile(text, file);
  if (read.ok) return read;
  const { problems } = read;
  return { ok: false, judgement: unread(foreignFile(problems) ?? { kind: 'unreadable', problems }) };
}

/** A run file that has been read already. */
export function judgeRun(run: RunFile, file: string, find: FindBench): Judgement {
  const found = find(run.scenario);
  const bench = found?.ok ? good(asOfThen(run.receiverHash, found.value)) : found;
  if (bench === null) {
    const named = run.scenario.receiver;
    return {
      ...unread({ kind: 'foreign', part: 'noReceiver', found: named, wanted: ['receiverHere'] }),
      run,
    };
  }
  if (!bench.ok) return unread({ kind: 'unreadable', problems: bench.problems });
  const misfits = checkScenario(run.scenario, bench.value, file);
  if (misfits.length > 0) {
    const problems = misfits.map((problem) => ({ ...problem, place: `/scenario${problem.place}` }));
    return unread({ kind: 'unreadable', problems });
  }
  // What cannot be held against anything here needs no set, which may take long to deal.
  const foreign = foreignPart(run, bench.value);
  if (foreign !== null) return { verdict: foreign, run, scenarioKnown: bench.value.scenarioHash !== null };
  const setup = judgedSetup(bench.value, run.scenario, bench.value.known ?? null, file, run.engine);
  if (!setup.ok) {
    const problems = setup.problems.map((problem) => ({ ...problem, place: `/scenario${problem.place}` }));
    return unread({ kind: 'unreadable', problems });
  }
  let report: Report | undefined;
  const recompute = (on: BenchSetup, events: RunFile['events']): ClaimedScore => {
    report = gradeUnder(RULES_VERSIONS.find((version) => version === run.rules) ?? RULES_VERSION)(on, events);
    return claimOf(report);
  };
  const verdict = verifyRun(run, bench.value, recompute, setup.value);
  const judgement: Judgement = {
    ...{ verdict, run, scenarioKnown: bench.value.scenarioHash !== null },
    ...(report === undefined ? {} : { report }),
  };
  const graded = ['verified', 'unclaimed', 'claimMissing', 'scoreDiffers'].includes(verdict.kind);
  if (!graded || run.rules === RULES_VERSION) return judgement;
  const underToday = claimOf(gradeUnder(RULES_VERSION)(setup.value, run.events));
  return { ...judgement, underToday: verdict.kind === 'unclaimed' ? unsigned(underToday) : underToday };
}

function unread(verdict: Verdict): Judgement {
  return { verdict, run: null, scenarioKnown: false };
}

/** A file of a newer bench has one problem: what it says it is. */
function foreignFile(problems: readonly Problem[]): Verdict | null {
  const only = problems.length === 1 ? problems[0]! : null;
  if (only?.place === '/version') return { kind: 'foreign', part: 'version', found: only.found, wanted: only.wanted };
  return null;
}

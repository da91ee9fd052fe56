/** What is kept of a judgement: no words and no events, so that thousands of them are light and can cross from a worker to a page. */
import type { ClaimedScore } from '../files/runFile.ts';
import { type Block, type Report, type ScoreLine, VERDICT_IDS, type VerdictId } from '../grading/report.ts';
import type { Verdict } from '../run/verify.ts';
import type { Judgement } from './judgeRun.ts';
import { actsHash, headIsSealed, type Outcome, outcomeOf, scoreOf } from './outcome.ts';

export interface Judged {
  /** what the file says of itself; null where it could not be read, or does not say */
  readonly learner: string | null;
  readonly day: string | null;
  readonly runId: string | null;
  readonly scenario: ScenarioName | null;
  /** version of the rules that the claim was graded by; null where the file could not be read */
  readonly rules: number | null;
  /** whether name and day stand under the seal */
  readonly headSealed: boolean;
  readonly outcome: Outcome;
  readonly finding: Verdict;
  readonly scenarioKnown: boolean;
  readonly underToday: ClaimedScore | null;
  /** what the acts earn when they are done again, and nothing is passed that was never signed off; null where that was not asked any more */
  readonly score: { readonly total: number; readonly passed: boolean } | null;
  readonly marks: Marks | null;
  /** the same for the same acts; null where there are too few to compare */
  readonly acts: string | null;
}

export interface ScenarioName {
  readonly id: string;
  readonly code: string;
  readonly title: string;
}

/** The graded run in short. */
export interface Marks {
  readonly stands: Readonly<Record<VerdictId, boolean>>;
  readonly lines: readonly MarkedLine[];
  readonly turns: number;
  readonly parTurns: number;
  readonly seconds: number;
  readonly parSeconds: number;
  /** nobody has certified the job: both only stand for par */
  readonly parUnknown?: true;
}

export interface MarkedLine {
  readonly id: string;
  readonly rule: string;
  readonly block: Block;
  readonly points: number;
  readonly max: number;
  readonly hz: number | null;
}

export function judgedOf(judgement: Judgement): Judged {
  const { run, verdict, scenarioKnown, underToday, report } = judgement;
  const score = scoreOf(judgement);
  return {
    learner: run?.learner ?? null,
    day: run?.day ?? null,
    runId: run?.runId ?? null,
    scenario: run === null ? null : { id: run.scenario.id, code: run.scenario.code, title: run.scenario.title },
    rules: run?.rules ?? null,
    headSealed: run !== null && headIsSealed(run.seal),
    outcome: outcomeOf(judgement),
    finding: verdict,
    scenarioKnown,
    underToday: underToday ?? null,
    score: score && { total: score.total, passed: score.passed },
    marks: score === null || report === undefined ? null : marksOf(report),
    acts: run === null ? null : actsHash(run.events),
  };
}

function marksOf({ verdicts, lines, turns, parTurns, seconds, parSeconds, parUnknown }: Report): Marks {
  const stands = Object.fromEntries(VERDICT_IDS.map((id) => [id, verdicts[id].stands])) as Marks['stands'];
  const unknown = parUnknown === undefined ? {} : { parUnknown };
  return { stands, lines: lines.map(marked), turns, parTurns, seconds, parSeconds, ...unknown };
}

function marked({ id, rule, block, points, max, hz }: ScoreLine): MarkedLine {
  return { id, rule, block, points, max, hz };
}

/** What `regrade` says of one run file: a row of the table, or one line of JSON. */
import { saidProblem } from '../../describe/problem.ts';
import { toldWords, verdictWords } from '../../describe/verdict.ts';
import type { Judgement } from '../../judge/judgeRun.ts';
import { actsHash, headIsSealed, type Outcome, outcomeOf, scoreOf } from '../../judge/outcome.ts';
import type { Verdict } from '../../run/verify.ts';
import { harmless, type Terminal } from '../terminal.ts';

export interface Row {
  readonly file: string;
  readonly learner: string | null;
  readonly day: string | null;
  readonly runId: string | null;
  /** id of the scenario; null where the file could not be read */
  readonly scenario: string | null;
  readonly verdict: Outcome;
  /** what the acts earn when they are done again; null where that was not asked any more */
  readonly passed: boolean | null;
  readonly points: number | null;
  readonly reason: string;
  /** another file with the same acts */
  readonly sameAs: string | null;
  /** the same for the same acts, so that lists made apart can be held against each other */
  readonly acts: string | null;
  readonly finding: Verdict;
}

export function rowOf(terminal: Terminal, file: string, judgement: Judgement): Row {
  const { run, verdict } = judgement;
  const score = scoreOf(judgement);
  return {
    file,
    learner: run?.learner ?? null,
    day: run?.day ?? null,
    runId: run?.runId ?? null,
    scenario: run?.scenario.id ?? null,
    verdict: outcomeOf(judgement),
    passed: score?.passed ?? null,
    points: score?.total ?? null,
    reason: reasonOf(terminal, judgement),
    sameAs: null,
    acts: run === null ? null : actsHash(run.events),
    finding: verdict,
  };
}

/** Empty where there is nothing more to say. */
function reasonOf({ words }: Terminal, judgement: Judgement): string {
  const { verdict, run, scenarioKnown, underToday } = judgement;
  const say = words.cli.regrade;
  const reasons: string[] = [];
  if (verdict.kind !== 'verified') {
    const { sentence, details } = verdictWords(words, verdict);
    reasons.push(sentence, ...details.slice(0, 3), ...(details.length > 3 ? ['...'] : []));
  }
  if (underToday !== undefined && run !== null)
    reasons.push(say.otherRules(run.rules, scoreOf(judgement)!.total, underToday.total, underToday.passed));
  const judged = verdict.kind === 'verified' || verdict.kind === 'unclaimed' || verdict.kind === 'scoreDiffers';
  if (judged && !scenarioKnown) reasons.push(say.unknownScenario);
  if (verdict.kind === 'verified' && run?.learner != null && !headIsSealed(run.seal)) reasons.push(say.nameNotSealed);
  return harmless(reasons.join(' '));
}

/** A row as JSON has it: what is wrong with a file in words. */
export function saidRow({ words }: Terminal, row: Row): object {
  const { finding } = row;
  if (finding.kind === 'unreadable')
    return {
      ...row,
      finding: { ...finding, problems: finding.problems.map((problem) => saidProblem(words, problem)) },
    };
  if (finding.kind !== 'foreign') return row;
  const [found, wanted] = [toldWords(words, finding.found), toldWords(words, finding.wanted)];
  return { ...row, finding: { ...finding, found, wanted } };
}

/** Names, for each row that has one, the first other row with the same acts. */
export function withSameActs(rows: readonly Row[]): readonly Row[] {
  const byActs = new Map<string, Row[]>();
  for (const row of rows) {
    if (row.acts !== null) byActs.set(row.acts, [...(byActs.get(row.acts) ?? []), row]);
  }
  return rows.map((row) => {
    const other = row.acts === null ? undefined : byActs.get(row.acts)!.find((one) => one !== row);
    return other === undefined ? row : { ...row, sameAs: other.file };
  });
}

/** What is said of one run file of many: a row of the table, or one line of JSON. The page and the command line both say this. */
import { harmless } from '../base/harmless.ts';
import type { Problem } from '../base/result.ts';
import { type SaidProblem, saidProblem } from '../describe/problem.ts';
import { toldWords, verdictWords } from '../describe/verdict.ts';
import type { Verdict } from '../run/verify.ts';
import type { Words } from '../words/words.ts';
import type { Judged } from './judged.ts';
import type { Outcome } from './outcome.ts';

export interface Row {
  readonly file: string;
  readonly learner: string | null;
  readonly day: string | null;
  readonly runId: string | null;
  /** id of the scenario; null where the file could not be read */
  readonly scenario: string | null;
  readonly verdict: Outcome;
  /** what the acts earn when they are done again, and nothing is passed that was never signed off; null where that was not asked any more */
  readonly passed: boolean | null;
  readonly points: number | null;
  readonly reason: string;
  /** another file with the same acts */
  readonly sameAs: string | null;
  /** the same for the same acts, so that lists made apart can be held against each other */
  readonly acts: string | null;
  readonly finding: Verdict;
}

export function rowOf(words: Words, file: string, judged: Judged): Row {
  const { learner, day, runId, scenario, outcome, score, acts, finding } = judged;
  return {
    ...{ file, learner, day, runId },
    scenario: scenario?.id ?? null,
    verdict: outcome,
    passed: score?.passed ?? null,
    points: score?.total ?? null,
    reason: reasonOf(words, judged),
    sameAs: null,
    acts,
    finding,
  };
}

/** Empty where there is nothing more to say. */
function reasonOf(words: Words, judged: Judged): string {
  const { finding, score, rules, scenarioKnown, underToday } = judged;
  const say = words.judging;
  const reasons: string[] = [];
  if (finding.kind !== 'verified') {
    const { sentence, details } = verdictWords(words, finding);
    reasons.push(sentence, ...details.slice(0, 3), ...(details.length > 3 ? ['...'] : []));
  }
  if (underToday !== null && rules !== null && score !== null)
    reasons.push(say.otherRules(rules, score.total, underToday.total, underToday.passed));
  if (score !== null && !scenarioKnown) reasons.push(say.unknownScenario);
  if (finding.kind === 'verified' && judged.learner !== null && !judged.headSealed) reasons.push(say.nameNotSealed);
  return harmless(reasons.join(' '));
}

/** A row as JSON has it: what is wrong with a file in words. */
export function saidRow(words: Words, row: Row): object {
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

/** What another process answered with: its words stay as they are. */
export function rowAnswered(line: string): Row {
  const row = JSON.parse(line) as Row;
  const { finding } = row;
  if (finding.kind !== 'unreadable') return row;
  const said = finding.problems as unknown as readonly SaidProblem[];
  const problems = said.map(
    ({ found, wanted, ...where }): Problem => ({ ...where, found: ['said', found], wanted: ['said', wanted] }),
  );
  return { ...row, finding: { ...finding, problems } };
}

/** For each row that has one, names the first other row with the same acts. */
export function withSameActs<R extends Pick<Row, 'file' | 'acts' | 'sameAs'>>(rows: readonly R[]): readonly R[] {
  const byActs = new Map<string, [R, ...R[]]>();
  for (const row of rows) {
    if (row.acts === null) continue;
    const alike = byActs.get(row.acts);
    if (alike === undefined) byActs.set(row.acts, [row]);
    else if (alike.length < 2) alike.push(row);
  }
  return rows.map((row) => {
    const other = row.acts === null ? undefined : byActs.get(row.acts)!.find((one) => one !== row);
    return other === undefined ? row : { ...row, sameAs: other.file };
  });
}

/** Walks the rows: each rule reads each of its subjects, and each reading becomes a line. */
import type { DraftLine } from './draft.ts';
import { roundMeasured, shareOf } from './falling.ts';
import { type About, type LineRule, makesLines, type Rule, type Subjects } from './rules/rule.ts';

/** What the rules look at; a rule whose subject is left out makes no line. */
export type Evidence = { readonly [A in About]?: readonly Subjects[A][] };

/** What tells the lines of one rule apart; null = it has but one. */
const KEYS: { readonly [A in About]: (subject: Subjects[A]) => string | null } = {
  demand: ({ response, item }) => `${response}:${item.id}`,
  failedPart: ({ part }) => part,
  bench: () => null,
  biasLine: ({ at }) => at,
  proof: ({ proof }) => proof,
  finding: ({ proof }) => proof,
  diagnosis: () => null,
  mishaps: () => null,
  effort: () => null,
};

/** In the order of the rows; rows about the same that follow each other stand together under each subject, as on the sheet. */
export function linesOf(rules: readonly Rule[], evidence: Evidence): readonly DraftLine[] {
  return runsOf(rules.filter(makesLines)).flatMap((run) => linesAbout(run[0]!.about, run, evidence));
}

function runsOf(rules: readonly LineRule[]): readonly (readonly LineRule[])[] {
  const runs: LineRule[][] = [];
  for (const rule of rules) {
    const last = runs.at(-1);
    if (last?.[0]?.about === rule.about) last.push(rule);
    else runs.push([rule]);
  }
  return runs;
}

/** The rows of a run are about `about`, which the compiler cannot see. */
type RowAbout<A extends About> = LineRule & {
  readonly weight: number | ((subject: Subjects[A]) => number);
  readonly reads: (subject: Subjects[A]) => ReturnType<LineRule['reads']>;
};

function linesAbout<A extends About>(about: A, run: readonly LineRule[], evidence: Evidence): readonly DraftLine[] {
  const rows = run as readonly RowAbout<A>[];
  const subjects: readonly Subjects[A][] = evidence[about] ?? [];
  const unseen = evidence.bench?.some((bench) => !hasPicture(bench)) ?? false;
  return subjects.flatMap((subject) =>
    rows.flatMap((row) => {
      const line = lineOf(row, subject, KEYS[about](subject));
      if (line === null) return [];
      return unseen && row.needsPicture === true ? [{ ...line, earned: 0, held: 'noPicture' }] : [line];
    }),
  );
}

function lineOf<A extends About>(row: RowAbout<A>, subject: Subjects[A], key: string | null): DraftLine | null {
  const reading = row.reads(subject);
  if (reading === null) return null;
  const { measured: value, unit, limits, response, ...more } = reading;
  const measured = roundMeasured(value, unit);
  return {
    id: key === null ? row.number : `${row.number}:${key}`,
    rule: row.number,
    block: row.block,
    ...(response === undefined ? {} : { response }),
    weight: typeof row.weight === 'number' ? row.weight : row.weight(subject),
    earned: shareOf(measured, limits),
    ...{ measured, low: limits.low, high: limits.high, unit },
    ...(row.pointsOnly === true ? { pointsOnly: true } : {}),
    ...more,
  };
}

/** G12: a sweep reaches the tube. */
function hasPicture({ xConnected, sweeping, detectedPeakVolts }: Subjects['bench']): boolean {
  return xConnected && sweeping && detectedPeakVolts > 0;
}

/** A class as a list: one row a file, told apart, sorted, sifted. */
import { VERDICT_IDS, type VerdictId } from '../grading/report.ts';
import type { Words } from '../words/words.ts';
import type { Judged, Marks, ScenarioName } from './judged.ts';
import type { Outcome } from './outcome.ts';
import { type Row, rowOf, withSameActs } from './row.ts';

/** A file that has been judged; `no` counts the files as they came. */
export interface JudgedFile {
  readonly no: number;
  readonly file: string;
  readonly judged: Judged;
}

export interface ClassRow extends Row {
  readonly no: number;
  readonly title: ScenarioName | null;
  readonly marks: Marks | null;
  /** number of the other file with the same acts; null: there is none */
  readonly sameNo: number | null;
  /** that other file came earlier */
  readonly copy: boolean;
}

export function classRows(words: Words, files: readonly JudgedFile[]): readonly ClassRow[] {
  const rows = files.map(({ no, file, judged }): ClassRow => {
    const { scenario: title, marks } = judged;
    return { ...rowOf(words, file, judged), no, title, marks, sameNo: null, copy: false };
  });
  const first = new Map<string, number>();
  const second = new Map<string, number>();
  for (const { acts, no } of rows) {
    if (acts === null) continue;
    if (!first.has(acts)) first.set(acts, no);
    else if (!second.has(acts)) second.set(acts, no);
  }
  return withSameActs(rows).map((row) => {
    if (row.acts === null || row.sameAs === null) return row;
    const earliest = first.get(row.acts)!;
    const copy = earliest !== row.no;
    return { ...row, copy, sameNo: copy ? earliest : second.get(row.acts)! };
  });
}

export const SORT_KEYS = ['no', 'learner', 'scenario', ...VERDICT_IDS, 'points', 'turns', 'time', 'state'] as const;
export type SortKey = (typeof SORT_KEYS)[number];

export interface Order {
  readonly by: SortKey;
  readonly down: boolean;
}

/** What there is nothing of comes last either way; what is alike stays in the order in which it came. */
export function inOrder(rows: readonly ClassRow[], { by, down }: Order, language: string): readonly ClassRow[] {
  const letters = new Intl.Collator(language, { numeric: true });
  const keys = new Map(rows.map((row) => [row, keyOf(row, by)]));
  return [...rows].sort((a, b) => {
    const [p, q] = [keys.get(a)!, keys.get(b)!];
    if (p === null || q === null) return Number(p === null) - Number(q === null) || a.no - b.no;
    const way = typeof p === 'string' ? letters.compare(p, String(q)) : p - Number(q);
    return (down ? -way : way) || a.no - b.no;
  });
}

const TRUST: readonly Outcome[] = [
  'verified',
  'otherRules',
  'unfinished',
  'otherScenario',
  'altered',
  'impossible',
  'unreadable',
];

function keyOf(
  { no, learner, title, scenario, marks, points, verdict }: ClassRow,
  by: SortKey,
): string | number | null {
  switch (by) {
    case 'no':
      return no;
    case 'learner':
      return learner;
    case 'scenario':
      return title?.code ?? scenario;
    case 'points':
      return points;
    case 'turns':
      return marks === null ? null : ofPar(marks);
    case 'time':
      return marks === null ? null : marks.seconds;
    case 'state':
      return TRUST.indexOf(verdict);
    default:
      return marks === null ? null : Number(marks.stands[by satisfies VerdictId]);
  }
}

/** Turns made against par. */
export function ofPar({ turns, parTurns }: Marks): number {
  return parTurns > 0 ? turns / parTurns : 0;
}

export interface Sieve {
  /** null: all of them */
  readonly learner: string | null;
  readonly scenario: string | null;
  readonly bestOnly: boolean;
}

export function sifted(rows: readonly ClassRow[], { learner, scenario, bestOnly }: Sieve): readonly ClassRow[] {
  const wanted = rows.filter(
    (row) => (learner === null || row.learner === learner) && (scenario === null || row.scenario === scenario),
  );
  return bestOnly ? bestOfEach(wanted) : wanted;
}

/** Of each learner and scenario the run that is most to be trusted, then the one with most points. What nobody signed, or what was not graded, stays. */
function bestOfEach(rows: readonly ClassRow[]): readonly ClassRow[] {
  const best = new Map<string, ClassRow>();
  const nameOf = (row: ClassRow): string | null =>
    row.learner === null || row.points === null ? null : JSON.stringify([row.learner, row.scenario]);
  for (const row of rows) {
    const name = nameOf(row);
    if (name === null) continue;
    const other = best.get(name);
    if (other === undefined || isBetter(row, other)) best.set(name, row);
  }
  return rows.filter((row) => {
    const name = nameOf(row);
    return name === null || best.get(name) === row;
  });
}

function isBetter(row: ClassRow, other: ClassRow): boolean {
  const trust = TRUST.indexOf(other.verdict) - TRUST.indexOf(row.verdict);
  const passed = Number(row.passed === true) - Number(other.passed === true);
  return (trust || passed || row.points! - other.points!) > 0;
}

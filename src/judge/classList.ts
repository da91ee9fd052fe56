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

/** Rows of a list that grows: the row of a file stays the same object for as long as nothing in it changes. */
export function createClassRows(words: Words): (files: readonly JudgedFile[]) => readonly ClassRow[] {
  let kept = new Map<number, { readonly judged: Judged; readonly row: ClassRow }>();
  return (files) => {
    const alone = files.map(({ no, file, judged }) => {
      const before = kept.get(no);
      return before?.judged === judged ? before.row : rowAlone(words, no, file, judged);
    });
    const rows = withSameNos(alone);
    kept = new Map(files.map(({ no, judged }, i) => [no, { judged, row: rows[i]! }]));
    return rows;
  };
}

export const classRows = (words: Words, files: readonly JudgedFile[]): readonly ClassRow[] =>
  createClassRows(words)(files);

function rowAlone(words: Words, no: number, file: string, judged: Judged): ClassRow {
  const { scenario: title, marks } = judged;
  return { ...rowOf(words, file, judged), no, title, marks, sameNo: null, copy: false };
}

/** What the other files of the list say of each. */
function withSameNos(rows: readonly ClassRow[]): readonly ClassRow[] {
  const earliest = new Map<string, number>();
  const byFile = withSameActs(
    rows.map((row) => ({ row, file: `${row.no}`, acts: row.acts, sameAs: null as string | null })),
  );
  for (const { acts, no } of rows) if (acts !== null && !earliest.has(acts)) earliest.set(acts, no);
  return byFile.map(({ row, sameAs }) => {
    const sameNo = sameAs === null ? null : Number(sameAs);
    if (sameNo === row.sameNo) return row;
    const other = sameNo === null ? null : rows.find(({ no }) => no === sameNo)!;
    return {
      ...row,
      sameNo,
      sameAs: other?.file ?? null,
      copy: row.acts !== null && earliest.get(row.acts) !== row.no,
    };
  });
}

const SORT_KEYS = ['no', 'learner', 'scenario', ...VERDICT_IDS, 'points', 'turns', 'time', 'state'] as const;
export type SortKey = (typeof SORT_KEYS)[number];

export interface Order {
  readonly by: SortKey;
  readonly down: boolean;
}

/** What has no value comes last either way; equal values stay in the order in which they came. */
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

/** Turns made against par; null where there is none. */
export function ofPar({ turns, parTurns, parUnknown }: Marks): number | null {
  if (parUnknown) return null;
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

/** Of each learner and scenario the run most to be trusted, then the one with most points. Runs that nobody signed, or that were not graded, stay. */
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

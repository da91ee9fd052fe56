/** Exams in a class: each candidate's file of runs with what it comes to, by the sheet that the instructor laid beside it or, where there is none, by what the file says that the sheet asks. */
import type { SheetTerms } from '../files/eveningTerms.ts';
import type { ClassRow } from './classList.ts';
import { type Whole, wholeOf } from './whole.ts';

/** One file of runs, as it was brought. */
export interface Sitting {
  /** names of its runs begin with this and a slash */
  readonly folder: string;
  readonly candidate: string;
  readonly title: string;
  /** left out: saved before sheets could ask anything */
  readonly terms?: SheetTerms | undefined;
}

export interface LaidSheet {
  readonly title: string;
  readonly terms: SheetTerms;
}

export interface SittingRow {
  readonly folder: string;
  readonly candidate: string;
  readonly title: string;
  /** null: nobody says what the sheet asks */
  readonly whole: Whole | null;
  /** sheet: by one that lies here; file: by what the file itself says, which nobody can check */
  readonly by: 'sheet' | 'file';
  readonly runs: readonly number[];
}

export function sittingRows(
  sittings: readonly Sitting[],
  rows: readonly ClassRow[],
  sheets: readonly LaidSheet[],
): readonly SittingRow[] {
  const byNo = new Map(rows.map((row) => [row.no, row]));
  return sittings.map((sitting): SittingRow => {
    const { folder, candidate, title } = sitting;
    const mine = rows.filter(({ file, learner }) => learner === candidate && file.startsWith(`${folder}/`));
    const runs = mine.map((row) => ({
      ...row,
      shared: row.sameNo !== null && byNo.get(row.sameNo)?.learner !== candidate,
    }));
    const sheet = sheetOf(sitting, mine, sheets);
    const terms = sheet?.terms ?? sitting.terms ?? null;
    return {
      ...{ folder, candidate, title, by: sheet === null ? 'file' : 'sheet' },
      ...{ whole: terms === null ? null : wholeOf(terms, runs), runs: mine.map(({ no }) => no) },
    };
  });
}

/** The sheet of that title; else the only one that has all the scenarios on it, as a title can be altered in the file. */
function sheetOf({ title, terms }: Sitting, mine: readonly ClassRow[], sheets: readonly LaidSheet[]): LaidSheet | null {
  const named = sheets.findLast((one) => one.title === title);
  if (named !== undefined) return named;
  const ids = new Set([...(terms?.scenarios ?? []), ...mine.flatMap(({ scenario }) => scenario ?? [])]);
  const holding =
    ids.size === 0 ? [] : sheets.filter((one) => [...ids].every((id) => one.terms.scenarios.includes(id)));
  return holding.length === 1 ? holding[0]! : null;
}

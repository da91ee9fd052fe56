/** The rows of a class as a table for spreadsheets. */
import { csvText } from '../base/csv.ts';
import type { Row } from './row.ts';

const COLUMNS = ['file', 'learner', 'scenario', 'verdict', 'passed', 'points', 'reason', 'sameAs'] as const;

export function csvOf(rows: readonly Row[]): string {
  return csvText([COLUMNS, ...rows.map((row) => COLUMNS.map((column) => row[column]))]);
}

/** Rows as a table that any spreadsheet reads (RFC 4180), and in which no cell is taken for a formula. */
import type { Row } from './row.ts';

const COLUMNS = ['file', 'learner', 'scenario', 'verdict', 'passed', 'points', 'reason', 'sameAs'] as const;

export function csvOf(rows: readonly Row[]): string {
  const lines = [[...COLUMNS], ...rows.map((row) => COLUMNS.map((column) => cellOf(row[column])))];
  return lines.map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');
}

function cellOf(value: string | number | boolean | null): string {
  return typeof value === 'string' ? plain(value) : value === null ? '' : String(value);
}

/** A text that begins like a formula is led in by an apostrophe, which spreadsheets take as the mark of a text. */
function plain(text: string): string {
  return /^\s*[=+\-@\uff1d\uff0b\uff0d\uff20|\t\r]/u.test(text) ? `'${text}` : text;
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

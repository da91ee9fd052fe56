/** A table as text that any spreadsheet reads (RFC 4180), and in which no cell is taken for a formula. */

export type Cell = string | number | boolean | null;

export function csvText(rows: readonly (readonly Cell[])[]): string {
  return rows.map((cells) => `${cells.map((cell) => quoted(cellOf(cell))).join(',')}\r\n`).join('');
}

function cellOf(value: Cell): string {
  return typeof value === 'string' ? plain(value) : value === null ? '' : String(value);
}

/** A text that begins like a formula is led in by an apostrophe, which spreadsheets take as the mark of a text. */
function plain(text: string): string {
  return /^\s*[=+\-@\uff1d\uff0b\uff0d\uff20|\t\r]/u.test(text) ? `'${text}` : text;
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

/** Rows as text in columns: the first to the left, the others to the right. The first row is the head. */
export function tableOf(rows: readonly (readonly string[])[]): string {
  // A row that says why there is nothing to show does not make its column wide.
  const told = (row: readonly string[]): number => (row.some((cell, i) => i > 1 && cell !== '') ? row.length : 1);
  const widths = rows[0]!.map((_, column) =>
    Math.max(...rows.map((row) => (column < told(row) ? row[column]!.length : 0))),
  );
  return rows
    .map((row) =>
      row
        .map((cell, column) => (column === 0 ? cell.padEnd(widths[0]!) : cell.padStart(widths[column]!)))
        .join('  ')
        .trimEnd(),
    )
    .map((line) => `${line}\n`)
    .join('');
}

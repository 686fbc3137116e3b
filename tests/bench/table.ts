/** Plain table: first row the heads, first column to the left, the others to the right. */
export function table(rows: readonly (readonly string[])[]): string {
  const width = (column: number) => Math.max(...rows.map((row) => (row[column] ?? '').length));
  const line = (row: readonly string[]) =>
    row.map((cell, column) => (column === 0 ? cell.padEnd(width(0)) : cell.padStart(width(column)))).join('  ');
  return rows.map((row) => `${line(row)}\n`).join('');
}

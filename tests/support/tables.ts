import { readFileSync } from 'node:fs';

export type TableRow = Readonly<Record<string, string>>;

/** A published table of shared/tables: rows by column name. Lines that begin with # say where it comes from. */
export function table(name: string): readonly TableRow[] {
  const text = readFileSync(new URL(`../../shared/tables/${name}.csv`, import.meta.url), 'utf8');
  const [heading = '', ...rows] = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  const columns = heading.split(',');
  return rows.map((row) => {
    const cells = row.split(',');
    return Object.fromEntries(columns.map((column, i) => [column, cells[i] ?? '']));
  });
}

/** The number in a column, which must be there. */
export function num(row: TableRow, column: string): number {
  const value = Number(row[column]);
  if (row[column] === undefined || row[column] === '' || Number.isNaN(value))
    throw new Error(`no number in column ${column} of ${JSON.stringify(row)}`);
  return value;
}

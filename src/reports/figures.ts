import Table from 'cli-table3';

type Align = 'left' | 'right';

const noLines = Object.fromEntries(
  ['top', 'bottom', 'left', 'right', 'mid', 'middle'].flatMap((side) =>
    ['', '-mid', '-left', '-right'].map((end) => [`${side}${end}`, '']),
  ),
);

/** Short figures in columns, without lines: for what always fits, so that nothing has to be broken over lines. */
export function figures(rows: readonly (readonly string[])[], aligns: readonly Align[], indent: number): string[] {
  const table = new Table({
    chars: { ...noLines, middle: '  ' },
    style: { 'padding-left': 0, 'padding-right': 0, head: [], border: [], compact: true },
    colAligns: [...aligns],
  });
  table.push(...rows.map((row) => [...row]));
  return table
    .toString()
    .split('\n')
    .map((line) => (' '.repeat(indent) + line).trimEnd());
}

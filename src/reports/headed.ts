import { fits, grid, textOf, linesOf, type Cell, type Column } from './layout.ts';
import type { Look } from './look.ts';

type Row = readonly Cell[];

const isBlank = (cell: Cell | undefined) => cell === undefined || linesOf(cell).every((line) => textOf(line) === '');

/**
 * A table whose first row is its head. On a screen too narrow for it each row is a list of its own, under its cell number
 * `title`, by the names of the head.
 */
export function headed(rows: readonly Row[], columns: readonly Column[], look: Look, indent = 0, title = 0): string[] {
  const [head, ...body] = rows;
  if (head === undefined || fits(rows, columns, look, indent)) return grid(rows, columns, look, indent);
  return body.flatMap((row) => {
    const said = row.flatMap((cell, i): Row[] => (i === title || isBlank(cell) ? [] : [[head[i] ?? '', cell]]));
    return [...grid([[row[title] ?? '']], [{}], look, indent), ...grid(said, [{ least: 12 }, {}], look, indent + 2)];
  });
}

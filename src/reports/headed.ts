import {
  cut,
  fits,
  gap,
  grid,
  linesOf,
  naturalWidth,
  painted,
  paintOf,
  paragraph,
  textOf,
  widths,
  type Cell,
  type Column,
  type Line,
} from './layout.ts';
import { isByLine, signs, type Look } from './look.ts';
import { worded } from '../words/worded.ts';

type Row = readonly Cell[];

const isBlank = (cell: Cell | undefined) => cell === undefined || linesOf(cell).every((line) => textOf(line) === '');
const firstOf = (cell: Cell | undefined): Line => (cell === undefined ? '' : (linesOf(cell)[0] ?? ''));

/**
 * A table whose first row is its head. On a screen each other row is one line: names are cut short where there is no room for them, with a
 * word at the end on how to see them, figures never. What stands in the cell number `title` of a row below its first line goes
 * under the row, over the whole width. On a screen too narrow for that each row is a list of its own, under that cell, by the
 * names of the head.
 */
export function headed(rows: readonly Row[], columns: readonly Column[], look: Look, asked = 0, title = 0): string[] {
  const [head, ...body] = rows;
  if (head === undefined || isByLine(look)) return grid(rows, columns, look, asked);
  const firsts = body.map((row) => row.map(firstOf));
  const firm = columns.map((column, i) =>
    column.align === 'right' || column.whole === true
      ? { ...column, least: Math.max(naturalWidth(firsts, i, look), longestWord(head[i], look)) }
      : column,
  );
  // Before a table becomes a list it begins at the edge.
  const indent = fits(firsts, firm, look, asked) ? asked : 0;
  if (!fits(firsts, firm, look, indent)) return lists(head, body, look, asked, title);
  const whole = [head, ...firsts];
  const wide = roomFor(whole, firm, look.columns - indent, look);
  const shown = firsts.map((row) => row.map((line, i) => cutTo(line, wide[i] ?? 0, look)));
  const lines = grid(
    [head, ...shown],
    columns.map((column, i) => ({ ...column, least: wide[i] ?? 0 })),
    look,
    indent,
  );
  const ofHead = lines.length - body.length;
  return [
    ...lines.slice(0, ofHead),
    ...body.flatMap((row, k) => [lines[ofHead + k] ?? '', ...below(row[title], look, indent)]),
    ...howToSeeAll(firsts, shown, widths(whole, columns, Infinity, look), look, indent),
  ];
}

/** Before a name is cut short, what stands over figures goes on in a second line. */
function roomFor(rows: readonly Row[], firm: readonly Column[], room: number, look: Look): number[] {
  const wide = widths(rows, firm, room, look);
  const enough = widths(rows, firm, Infinity, look);
  const isNarrow = firm.some(({ align, whole }, i) => align !== 'right' && whole !== true && wide[i] !== enough[i]);
  if (!isNarrow) return wide;
  const tight = firm.map((c) => (c.align === 'right' || c.whole === true ? { ...c, most: c.least ?? Infinity } : c));
  return widths(rows, tight, room, look);
}

function longestWord(cell: Cell | undefined, look: Look): number {
  return Math.max(
    0,
    ...signs(textOf(firstOf(cell)), look)
      .split(' ')
      .map(look.widthOf),
  );
}

function cutTo(line: Line, columns: number, look: Look): Line {
  return painted(paintOf(line), cut(textOf(line), columns, look));
}

function below(cell: Cell | undefined, look: Look, indent: number): string[] {
  const more = cell === undefined ? [] : linesOf(cell).slice(1);
  return more.flatMap((line) => paragraph(textOf(line), look, indent + 2, paintOf(line), indent + 4));
}

function howToSeeAll(
  firsts: readonly (readonly Line[])[],
  shown: readonly (readonly Line[])[],
  natural: readonly number[],
  look: Look,
  indent: number,
): string[] {
  const isCut = firsts.some((row, k) =>
    row.some((line, i) => signs(textOf(line), look) !== textOf(shown[k]?.[i] ?? '')),
  );
  if (!isCut) return [];
  const columns = indent + natural.reduce((sum, width) => sum + width + gap, -gap);
  return paragraph(worded`… stands for more: --width ${columns} shows it`, look, indent, look.paint.quiet);
}

function lists(head: Row, body: readonly Row[], look: Look, indent: number, title: number): string[] {
  return body.flatMap((row) => {
    const said = row.flatMap((cell, i): Row[] => (i === title || isBlank(cell) ? [] : [[head[i] ?? '', cell]]));
    return [...grid([[row[title] ?? '']], [{}], look, indent), ...grid(said, [{ least: 12 }, {}], look, indent + 2)];
  });
}

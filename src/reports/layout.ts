import { shortMonth, shortWeekday } from '../words/calendar-names.ts';
import { spokenCode } from '../words/worded.ts';
import { isByLine, signs, type Look, type Paint } from './look.ts';

/** A line of a cell: text, and how it is painted once it has been measured. */
export interface Painted {
  readonly text: string;
  readonly paint: Paint;
}
export type Line = string | Painted;
export type Cell = Line | readonly Line[];

export interface Column {
  readonly align?: 'right';
  /** Never narrower than this, nor than its content if that is narrower. */
  readonly least?: number;
  /** Never wider than this. */
  readonly most?: number;
  /** In a table with a head: never cut short. What is aligned to the right never is. */
  readonly whole?: true;
}

/** Between one column and the next. */
export const gap = 2;
const usualLeast = 10;
/** Of lines of any length, how far a column is aligned: what is longer runs on, and pushes only its own line out. */
const mostByLine = 60;

export const linesOf = (cell: Cell): readonly Line[] => (typeof cell === 'string' || 'text' in cell ? [cell] : cell);
export const textOf = (line: Line): string => (typeof line === 'string' ? line : line.text);
export const paintOf = (line: Line): Paint => (typeof line === 'string' ? (text) => text : line.paint);

export function painted(paint: Paint, text: string): Painted {
  return { text, paint };
}

const noBreak = '\u00a0';

/** A number and its unit stay on one line: `20 °C`, `82 %`, `1 h 30 min`, `8:30 am`, `8:30 a. m.`. */
function unitsHeld(text: string): string {
  return text
    .replaceAll(/(\d) ([ap]\.)[ \u00a0](?=m\.)/g, `$1${noBreak}$2${noBreak}`)
    .replaceAll(/deg (?=[CF]\b)/g, `deg${noBreak}`)
    .replaceAll(/(\d) (?=(?:°[CF]|deg\u00a0[CF]|%|×|min|h|d|am|pm|kPa|g\/kg|inHg|gr\/lb)(?![a-z]))/g, `$1${noBreak}`);
}

/** Less room than this has to break a date. */
const leastForDates = 16;
let dateWords:
  { readonly code: string; readonly days: ReadonlySet<string>; readonly months: ReadonlySet<string> } | undefined;

/** Most texts fit, or name no date: of those nothing more is asked. */
const mayBreakDate = (text: string, columns: number): boolean =>
  columns >= leastForDates && text.length > columns && /\d/.test(text);

/** The short names of weekdays and months, in the language spoken. */
function wordsOfDates(): NonNullable<typeof dateWords> {
  if (dateWords?.code === spokenCode()) return dateWords;
  const all = (say: (n: number) => string, count: number) =>
    new Set(Array.from({ length: count }, (_, k) => bare(say(k + 1))));
  dateWords = { code: spokenCode(), days: all(shortWeekday, 7), months: all(shortMonth, 12) };
  return dateWords;
}

/** Without what stands around a word. */
const bare = (word = ''): string => word.replaceAll(/[^\p{L}\d]/gu, '');

/** A day of the week, its day and month stay on one line: `Wed 13 Jan`, `Wed Jan 13`. */
function datesHeld(text: string): string {
  const { days, months } = wordsOfDates();
  const words = text.split(' ');
  const isDay = (word: string | undefined) => /^\d{1,2}$/.test(bare(word));
  const isMonth = (word: string | undefined) => months.has(bare(word));
  const begins = words.map((word, i) => {
    const [second, third] = [words[i + 1], words[i + 2]];
    return days.has(bare(word)) && ((isDay(second) && isMonth(third)) || (isMonth(second) && isDay(third)));
  });
  return words.reduce(
    (line, word, i) => `${line}${begins[i - 1] === true || begins[i - 2] === true ? noBreak : ' '}${word}`,
  );
}

/** Breaks `text` between words so that no line is wider than `columns`; a longer word is broken inside. */
export function wrap(text: string, columns: number, look: Look): string[] {
  const lines: string[] = [];
  let line = '';
  const held = unitsHeld(signs(text, look));
  for (const word of (mayBreakDate(held, columns) ? datesHeld(held) : held).split(' ').filter((w) => w !== '')) {
    for (const part of broken(word, columns, look)) {
      const longer = line === '' ? part : `${line} ${part}`;
      if (look.widthOf(longer) <= columns) line = longer;
      else {
        lines.push(line);
        line = part;
      }
    }
  }
  return [...lines, line].map((l) => l.replaceAll(noBreak, ' '));
}

function broken(word: string, columns: number, look: Look): string[] {
  if (look.widthOf(word) <= columns) return [word];
  const parts = [''];
  const add = (more: string): void => {
    const part = `${parts.at(-1) ?? ''}${more}`;
    if (look.widthOf(part) <= columns || part === more) parts[parts.length - 1] = part;
    else parts.push(more);
  };
  // Behind a dash rather than inside what it joins: `8:30 am–` and `9:10 am`.
  for (const joined of word.split(/(?<=[–-])/))
    if (look.widthOf(joined) <= columns) add(joined);
    else look.graphemes(joined).forEach(add);
  return parts;
}

/** `text` in at most `columns`, with … for what is left out. */
export function cut(text: string, columns: number, look: Look): string {
  const whole = signs(text, look);
  if (look.widthOf(whole) <= columns) return whole;
  const more = signs('…', look);
  let kept = '';
  for (const grapheme of look.graphemes(whole)) {
    if (look.widthOf(kept + grapheme) + more.length > columns) break;
    kept += grapheme;
  }
  return kept + more;
}

/** Columns that the widest line of a column takes. */
export function naturalWidth(rows: readonly (readonly Cell[])[], index: number, look: Look): number {
  return rows.reduce(
    (most, row) =>
      linesOf(row[index] ?? '').reduce((m, line) => Math.max(m, look.widthOf(signs(textOf(line), look))), most),
    0,
  );
}

/** How wide each column is, where all of them have so much `room`. */
export function widths(
  rows: readonly (readonly Cell[])[],
  columns: readonly Column[],
  room: number,
  look: Look,
): number[] {
  const usualMost = isByLine(look) ? mostByLine : Infinity;
  const wide = columns.map((c, i) => Math.min(naturalWidth(rows, i, look), c.most ?? usualMost));
  const least = columns.map((c, i) => Math.min(wide[i] ?? 0, c.least ?? usualLeast));
  let over = wide.reduce((sum, w) => sum + w, 0) + gap * (columns.length - 1) - room;
  for (; over > 0; over -= 1) {
    const slack = wide.map((w, i) => (w > (least[i] ?? 0) ? w : 0));
    const widest = Math.max(...slack);
    if (widest === 0) break;
    const index = slack.lastIndexOf(widest);
    wide[index] = widest - 1;
  }
  return wide;
}

/** Is there room for every column at its least width? */
export function fits(rows: readonly (readonly Cell[])[], columns: readonly Column[], look: Look, indent = 0): boolean {
  const room = look.columns - indent;
  const wide = widths(rows, columns, room, look);
  return wide.reduce((sum, w) => sum + w, 0) + gap * (columns.length - 1) <= room;
}

/** The lines of a cell in one. */
function onOneLine(cell: Cell, look: Look): Cell {
  const lines = linesOf(cell);
  if (lines.length === 0) return '';
  if (lines.length === 1) return cell;
  const each = lines.map((line) => painted(paintOf(line), wrap(textOf(line), Infinity, look).join(' ')));
  const between = signs(' · ', look);
  return painted(() => each.map(({ paint, text }) => paint(text)).join(between), each.map(textOf).join(between));
}

/**
 * Rows as lines of text, cells one under the other; what does not fit a column goes on in the next line, but for a reader by
 * line.
 */
export function grid(
  cells: readonly (readonly Cell[])[],
  columns: readonly Column[],
  look: Look,
  indent = 0,
): string[] {
  const rows = isByLine(look) ? cells.map((row) => row.map((cell) => onOneLine(cell, look))) : cells;
  const wide = widths(rows, columns, look.columns - indent, look);
  return rows.flatMap((row) =>
    rowLines(row, columns, wide, look).map((line) => (line === '' ? '' : ' '.repeat(indent) + line)),
  );
}

function rowLines(row: readonly Cell[], columns: readonly Column[], wide: readonly number[], look: Look): string[] {
  const cells = columns.map((_, i) =>
    linesOf(row[i] ?? '').flatMap((line) =>
      wrap(textOf(line), isByLine(look) ? Infinity : Math.max(1, wide[i] ?? 1), look).map((text) =>
        painted(paintOf(line), text),
      ),
    ),
  );
  const height = Math.max(...cells.map((c) => c.length));
  return Array.from({ length: height }, (_, at) =>
    joined(
      cells.map((c) => c[at]),
      columns,
      wide,
      look,
    ),
  );
}

function joined(
  parts: readonly (Painted | undefined)[],
  columns: readonly Column[],
  wide: readonly number[],
  look: Look,
): string {
  let line = '';
  let owed = 0;
  parts.forEach((part, i) => {
    const room = Math.max(0, (wide[i] ?? 0) - look.widthOf(part?.text ?? ''));
    const before = columns[i]?.align === 'right' ? room : 0;
    // Blanks are owed until something follows them, so that no line ends in blanks, coloured or not.
    if (part !== undefined && part.text !== '') {
      line += ' '.repeat(owed + before) + part.paint(part.text);
      owed = room - before + gap;
    } else owed += (wide[i] ?? 0) + gap;
  });
  return line;
}

/**
 * Lines of `text`, each on as many as the screen has it take. The blanks before a line stay, and those that it goes on in have
 * as many. What is one word, like a path or an address, is to be copied and never broken.
 */
export function paragraphs(text: string, look: Look): string {
  return text
    .split('\n')
    .flatMap((line) => {
      const whole = signs(line, look);
      if (look.widthOf(whole) <= look.columns) return [whole];
      const words = line.trimStart();
      const indent = line.length - words.length;
      const longest = Math.max(0, ...words.split(' ').map(look.widthOf));
      return paragraph(words, { ...look, columns: Math.max(look.columns, indent + longest) }, indent);
    })
    .join('\n');
}

/** A text over as many lines as it needs. `hanging`: indent of the lines after the first. */
export function paragraph(text: string, look: Look, indent = 0, paint: Paint = (t) => t, hanging = indent): string[] {
  const first = wrap(text, Math.max(10, look.columns - Math.max(indent, hanging)), look);
  return first.map((line, i) => ' '.repeat(i === 0 ? indent : hanging) + paint(line));
}

import { dueSum, FIRST_SUM, OPENING, readLine, statedSum, writeLine } from './line.ts';
import { journalIn } from './read.ts';
import { entryOfRecord } from './record.ts';

const NEWLINE = 0x0a;
/** So many lines before and after are asked for the sum that proves a line. */
const NEAR = 20;
const LONGEST_SHOWN = 200;

/** What was taken out of a journal. */
export interface TakenOut {
  /** Line in the journal as it was, from 1. */
  readonly line: number;
  /** What can still be read of it, as it stands there: not harmless. */
  readonly text: string;
}

export interface RepairedJournal {
  readonly text: string;
  readonly kept: number;
  readonly takenOut: readonly TakenOut[];
}

interface Line {
  readonly line: number;
  readonly bytes: Uint8Array;
}

interface Proven extends Line {
  readonly record: Readonly<Record<string, unknown>>;
  readonly sum: string;
  /** Undefined where a newer Drybench wrote it. */
  readonly number: number | undefined;
}

interface Numbered extends Proven {
  readonly number: number;
}

const isNumbered = (line: Proven): line is Numbered => line.number !== undefined;

/** Records by where they begin: one whose newline is spoilt still ends where the next begins. */
function linesOf(bytes: Uint8Array): Line[] {
  const found: Line[] = [];
  const buffer = Buffer.from(bytes);
  for (let start = 0, line = 1; start < bytes.length;) {
    const newline = buffer.indexOf(NEWLINE, start);
    const next = buffer.indexOf(OPENING, start + 1, 'latin1');
    const isGlued = next >= 0 && (newline < 0 || next < newline);
    const end = isGlued ? next : newline < 0 ? bytes.length : newline;
    found.push({ line, bytes: bytes.subarray(start, end) });
    start = isGlued ? end : end + 1;
    line += isGlued ? 0 : 1;
  }
  return found;
}

function provenBy(previous: string, line: Line, bytes = line.bytes): Proven | undefined {
  const read = readLine(previous, bytes);
  const result = read && entryOfRecord(read.record);
  if (read === undefined || result === undefined || (!result.ok && !result.newer)) return undefined;
  return { ...line, record: { ...read.record }, sum: read.sum, number: result.ok ? result.entry.number : undefined };
}

function withSum(sum: string, bytes: Uint8Array): Uint8Array {
  const mended = Buffer.from(bytes);
  mended.write(`${OPENING}${sum}",`, 0, 'latin1');
  return mended;
}

/**
 * The lines that are word for word what was once written. Each one's sum is of itself and of the sum before it: so it
 * is proven by any sum that a line near it states. A line whose own sum is spoilt is proven by the next, which was
 * written after it.
 */
function provenLines(lines: readonly Line[]): Proven[] {
  const sums = [FIRST_SUM, ...lines.map((l) => statedSum(l.bytes))];
  const due = lines.map((l, i) => dueSum(sums[i] ?? FIRST_SUM, l.bytes));
  return lines.flatMap((line, index) => {
    const around = sums.slice(Math.max(0, index - NEAR), index + NEAR);
    for (const previous of [sums[index], due[index - 1], FIRST_SUM, ...around]) {
      const found = previous === undefined ? undefined : provenBy(previous, line);
      if (found !== undefined) return [found];
    }
    const [before, own, next] = [sums[index], due[index], lines[index + 1]];
    if (before === undefined || own === undefined || next === undefined || !provenBy(own, next)) return [];
    const found = provenBy(before, line, withSum(own, line.bytes));
    return found === undefined ? [] : [found];
  });
}

/** In the order in which they were written, each once. */
function inOrder(lines: readonly Numbered[]): Numbered[] {
  const first = new Map<string, Numbered>();
  for (const line of lines) if (!first.has(line.sum)) first.set(line.sum, line);
  return [...first.values()].sort((a, b) => a.number - b.number || a.line - b.line);
}

function withoutSum(record: object): object {
  return Object.fromEntries(Object.entries(record).filter(([key]) => key !== 'sum'));
}

/** The records numbered anew; who takes back what is not there any more goes as well. */
function writtenAnew(lines: readonly Numbered[]): { readonly text: string; readonly kept: readonly Numbered[] } {
  const numbers = new Map<number, number>();
  const kept: Numbered[] = [];
  let sum = FIRST_SUM;
  let text = '';
  for (const line of lines) {
    const undone = line.record['kind'] === 'undo' ? numbers.get(Number(line.record['entry'])) : 0;
    if (undone === undefined) continue;
    kept.push(line);
    numbers.set(line.number, kept.length);
    const written = writeLine(sum, {
      ...withoutSum(line.record),
      n: kept.length,
      ...(undone > 0 && { entry: undone }),
    });
    sum = written.sum;
    text += written.line;
  }
  return { text, kept };
}

/**
 * A journal made of all the records of a damaged one that are proven to be what was once written; undefined where
 * there is nothing to mend, or a newer Drybench wrote it.
 */
export function repairedJournal(bytes: Uint8Array): RepairedJournal | undefined {
  const { findings } = journalIn(bytes);
  if (findings.length === 0) return undefined;
  const lines = linesOf(bytes);
  const proven = provenLines(lines);
  if (!proven.every(isNumbered)) return undefined;
  const { text, kept } = writtenAnew(inOrder(proven));
  const still = new Set(kept.map((k) => k.bytes));
  const takenOut = lines
    .filter((l) => !still.has(l.bytes))
    .map(({ line, bytes: rest }) => ({
      line,
      text: Buffer.from(rest.subarray(0, LONGEST_SHOWN)).toString('utf8'),
    }));
  return { text, kept: kept.length, takenOut };
}

import type { Place } from '../model/finding.ts';

/** The text of one file, under the name that findings give it. */
export interface SourceText {
  /** Relative to the shop's folder, with forward slashes. */
  readonly file: string;
  readonly text: string;
}

const LONGEST_LINE_SHOWN = 400;

const known = new WeakMap<SourceText, readonly number[]>();

function lineStarts(source: SourceText): readonly number[] {
  const before = known.get(source);
  if (before !== undefined) return before;
  const starts = [0];
  for (const end of source.text.matchAll(/\r\n|\r|\n/g)) starts.push(end.index + end[0].length);
  known.set(source, starts);
  return starts;
}

/** Index of the last start that is not after `offset`. */
function lineIndex(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Line, column (in code points, from 1) and line text of an offset. */
export function placeAt(source: SourceText, offset: number): Place {
  const starts = lineStarts(source);
  const index = lineIndex(starts, offset);
  const start = starts[index] ?? 0;
  const line = source.text.slice(start, starts[index + 1]);
  const shown = line.slice(0, 2 * LONGEST_LINE_SHOWN).replace(/[\r\n]+$/, '');
  return {
    file: source.file,
    line: index + 1,
    column: Array.from(source.text.slice(start, offset)).length + 1,
    text: Array.from(shown).slice(0, LONGEST_LINE_SHOWN).join(''),
  };
}

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

/** The line that begins at `starts[index]`; undefined where there is none: behind the last line break there is no line. */
function lineAt({ text }: SourceText, starts: readonly number[], index: number): string | undefined {
  const start = starts[index];
  if (start === undefined || (index > 0 && start === text.length)) return undefined;
  const line = text.slice(start, Math.min(starts[index + 1] ?? text.length, start + 2 * LONGEST_LINE_SHOWN));
  return Array.from(line.replace(/[\r\n]+$/, ''))
    .slice(0, LONGEST_LINE_SHOWN)
    .join('');
}

/** Line, column (in code points, from 1) and line text of an offset, with the lines around it. */
export function placeAt(source: SourceText, offset: number): Place {
  const starts = lineStarts(source);
  const index = lineIndex(starts, offset);
  const start = starts[index] ?? 0;
  const before = lineAt(source, starts, index - 1);
  const after = lineAt(source, starts, index + 1);
  return {
    file: source.file,
    line: index + 1,
    column: Array.from(source.text.slice(start, offset)).length + 1,
    text: lineAt(source, starts, index) ?? '',
    ...(before !== undefined && { before }),
    ...(after !== undefined && { after }),
  };
}

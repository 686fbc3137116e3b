import { worded } from '../words/worded.ts';

/** Edits (insert, delete, replace, swap neighbours) that turn `a` into `b`: optimal string alignment. */
function editDistance(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  const cell = (i: number, j: number) => rows[i]?.[j] ?? 0;
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    rows.push(row);
    for (let j = 1; j <= b.length; j += 1) {
      const changed = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(cell(i - 1, j) + 1, cell(i, j - 1) + 1, cell(i - 1, j - 1) + changed);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) least = Math.min(least, cell(i - 2, j - 2) + 1);
      row.push(least);
    }
  }
  return cell(a.length, b.length);
}

const LONGEST_WORD = 60;

/** How many letters two words have in common from their beginning on. */
function alikeFor(a: string, b: string): number {
  let count = 0;
  while (count < a.length && a[count] === b[count]) count += 1;
  return count;
}

/**
 * The known word that `word` most likely stands for, if one is near enough: one that begins like it may be one edit further.
 * Of two as near, the one that is like it for longer.
 */
export function nearest(word: string, known: Iterable<string>): string | undefined {
  const sought = word.toLowerCase().replaceAll(/[\s_]/g, '-');
  if (sought.length > LONGEST_WORD) return undefined;
  let best = '';
  let fewest = Math.max(1, Math.floor(sought.length / 3)) + 1;
  for (const candidate of known) {
    if (Math.abs(candidate.length - sought.length) > fewest) continue;
    const edits = editDistance(sought, candidate.toLowerCase());
    const likelier = edits === fewest && alikeFor(sought, candidate) > alikeFor(sought, best);
    if (edits < fewest || likelier) {
      best = candidate;
      fewest = edits;
    }
  }
  return best === '' ? undefined : best;
}

/** More than these nobody looks through. */
const MOST_LISTED = 60;

/** `did you mean sand?`, or the words to choose from. */
export function adviseWord(word: string, known: readonly string[]): string {
  const guess = nearest(word, known);
  return guess === undefined ? adviseChoice(known) : worded`did you mean ${guess}?`;
}

/** The words to choose from. */
export function adviseChoice(choices: readonly string[]): string {
  const known = [...new Set(choices)];
  if (known.length === 0) return worded`there is none yet`;
  const [only] = known;
  if (only !== undefined && known.length === 1) return worded`write ${only}`;
  const listed = known.slice(0, MOST_LISTED).join(', ');
  const more = known.length - MOST_LISTED;
  if (more <= 0) return worded`write one of ${listed}`;
  return worded`write one of ${listed}, or of ${more} more, which the Tab key shows once drybench completion is set up`;
}

import type { Book } from '../model/book.ts';
import { standingEntries } from '../model/standing-entries.ts';

function plain(_: string, value: unknown): unknown {
  return value instanceof Map ? [...(value as ReadonlyMap<unknown, unknown>)] : value;
}

/**
 * All that a plan follows from but the time, as one text: the files, and the entries of the journal that still stand.
 * Taking back what was entered brings back the text that there was before. Long: to be kept as a fingerprint.
 */
export function basisText(book: Book): string {
  const { journal, ...files } = book;
  const deeds = standingEntries(journal).entries.map(({ at, deed }) => ({ at, deed }));
  return JSON.stringify({ files, deeds }, plain);
}

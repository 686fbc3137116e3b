import { FIRST_SUM, writeLine } from '../../src/files/journal/line.ts';
import { recordOfEntry } from '../../src/files/journal/record.ts';
import type { Deed } from '../../src/model/journal.ts';
import type { Minute } from '../../src/time/span.ts';

/** The lines of a journal of these deeds, all entered at that minute. */
export function journalLines(deeds: readonly Deed[], at: Minute): string[] {
  let sum = FIRST_SUM;
  return deeds.map((deed, i) => {
    const written = writeLine(sum, recordOfEntry({ number: i + 1, at, deed }, 'Europe/Dublin'));
    sum = written.sum;
    return written.line;
  });
}

import type { Book } from '../model/book.ts';
import { expand } from '../model/expand.ts';
import type { Situation } from '../model/situation.ts';
import type { Minute } from '../time/span.ts';

/** What is known at `now`: the files, and what the journal made of their tasks. */
export function situationOf(book: Book, now: Minute): Situation {
  const leadTests = new Map(
    book.pieces.flatMap((p) =>
      p.leadTest === undefined ? [] : [[p.id, { at: p.leadTest.minute, found: p.leadTest.found }] as const],
    ),
  );
  return {
    book,
    now,
    tasks: expand(book),
    done: new Map(),
    atWork: new Map(),
    notBefore: new Map(),
    sightings: new Map(),
    leadTests,
  };
}

import { applyJournal, type Applied } from '../model/apply-journal.ts';
import type { Book } from '../model/book.ts';
import { expand } from '../model/expand.ts';
import type { Finding } from '../model/finding.ts';
import type { Situation } from '../model/situation.ts';
import { withoutOldRags } from '../model/oily-rags.ts';
import { pacesOf } from './paces.ts';
import type { Minute } from '../time/span.ts';

const known = new WeakMap<Book, Applied>();

/** Worked out once for each book: whoever opens a shop asks several times. */
function appliedIn(book: Book): Applied {
  const before = known.get(book);
  if (before !== undefined) return before;
  const applied = applyJournal(book, expand(book), book.journal);
  known.set(book, applied);
  return applied;
}

/** What is known at `now`: the files, and what the journal made of their tasks. */
export function situationOf(book: Book, now: Minute): Situation {
  const applied = appliedIn(book);
  const { done, atWork, notBefore, sightings, leadTests } = applied;
  const tasks = withoutOldRags(applied.tasks, done, now);
  const paces = pacesOf(book.shop, { tasks, done });
  return { book, now, tasks, done, atWork, notBefore, sightings, paces, leadTests };
}

/** Entries of the journal that could not be taken for what they say. */
export function journalFindings(book: Book): readonly Finding[] {
  return appliedIn(book).findings;
}

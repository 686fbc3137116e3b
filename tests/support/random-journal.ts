import fc from './property.ts';
import { applyJournal } from '../../src/model/apply-journal.ts';
import type { Book } from '../../src/model/book.ts';
import { expand } from '../../src/model/expand.ts';
import { coatFaults, sightings, type Deed, type Entry } from '../../src/model/journal.ts';
import type { Minute } from '../../src/time/span.ts';

/** What somebody means to enter, before it is known which steps there are. */
interface Intent {
  readonly kind: Deed['kind'];
  /** Picks a step, or an entry to take back. */
  readonly pick: number;
  readonly word: number;
  readonly stray: boolean;
}

export const anyIntents: fc.Arbitrary<readonly Intent[]> = fc.array(
  fc.record({
    kind: fc.oneof(
      { weight: 6, arbitrary: fc.constant('done' as const) },
      { weight: 2, arbitrary: fc.constantFrom('failed' as const, 'repeated', 'skipped') },
      { weight: 2, arbitrary: fc.constantFrom('begun' as const, 'seen', 'slipped', 'lead-test', 'undo') },
    ),
    pick: fc.nat(1000),
    word: fc.nat(100),
    stray: fc.integer({ min: 0, max: 19 }).map((n) => n === 0),
  }),
  { maxLength: 14 },
);

const HALF_HOUR = 30;

/**
 * The intents as entries, each about a step that is there by then: done ones in the order of the tasks, half an hour
 * each, ending at `until`. Stray ones are about steps that nobody knows.
 */
export function entriesOf(book: Book, intents: readonly Intent[], until: Minute): Entry[] {
  const entries: Entry[] = [];
  intents.forEach(({ kind, pick, word, stray }, i) => {
    const at = until - (intents.length - i) * HALF_HOUR;
    const { tasks, done } = applyJournal(book, expand(book), entries);
    const open = tasks.filter((t) => !done.has(t.id));
    const ready = open.filter((t) => t.needs.every((n) => done.has(n.task)) && t.onlyFor === undefined);
    const over = tasks.filter((t) => done.has(t.id));
    const choose = (from: readonly { readonly id: string }[]): string =>
      stray || from.length === 0 ? `nobody/knows/step-${pick}` : from[pick % from.length]!.id;
    const deed = ((): Deed => {
      switch (kind) {
        case 'done':
          return { kind, task: choose(ready), from: at, to: at + HALF_HOUR };
        case 'begun':
          return { kind, task: choose(ready), from: at };
        case 'failed':
          return { kind, task: choose(over), fault: coatFaults[word % coatFaults.length]! };
        case 'seen':
          return { kind, task: choose(over), sighting: sightings[word % sightings.length]! };
        case 'repeated':
          return { kind, task: choose(tasks) };
        case 'skipped':
          return { kind, task: choose(open) };
        case 'slipped':
          return { kind, task: choose(open), until: until + word * 60 };
        case 'lead-test':
          return { kind, piece: stray ? 'nobody' : book.pieces[pick % book.pieces.length]!.id, found: word % 2 === 0 };
        case 'undo':
          return { kind, entry: stray ? i + 2 + pick : 1 + (pick % Math.max(1, i)) };
      }
    })();
    entries.push({ number: i + 1, at, deed });
  });
  return entries;
}

import fc from './property.ts';
import type { Book } from '../../src/model/book.ts';
import type { Hours } from '../../src/model/shop.ts';
import type { Span } from '../../src/time/span.ts';
import { anyBook, now } from './random-shop.ts';

const HOUR = 60;

/** A stretch of the first two weeks, of whole hours. */
const anyStretch = (most: number): fc.Arbitrary<Span> =>
  fc
    .tuple(fc.integer({ min: 0, max: 14 * 24 }), fc.integer({ min: 1, max: most }))
    .map(([from, hours]) => ({ start: now + from * HOUR, end: now + (from + hours) * HOUR }));

const anyTurn: fc.Arbitrary<Hours> = fc
  .record({ from: fc.integer({ min: 0, max: 12 }), hours: fc.integer({ min: 6, max: 24 }) })
  .map(({ from, hours }) => {
    const day = [{ from: from * HOUR, to: Math.min(24, from + hours) * HOUR }];
    const week = { monday: day, tuesday: [], wednesday: day, thursday: day, friday: [], saturday: [], sunday: [] };
    return { week, days: {} };
  });

/** A random shop with days off, an appointment, pieces that go away, and a spray room that is hired. */
export function anyDatedBook(pieces: number, steps: number): fc.Arbitrary<Book> {
  return fc
    .record({
      book: anyBook(pieces, steps),
      off: fc.array(anyStretch(48), { maxLength: 2 }),
      engaged: anyStretch(4),
      away: fc.option(anyStretch(6 * 24)),
      sectionAway: fc.option(anyStretch(6 * 24)),
      turn: fc.option(anyTurn),
    })
    .map(({ book, off, engaged, away, sectionAway, turn }) => ({
      ...book,
      shop: {
        ...book.shop,
        hands: book.shop.hands.map((h, i) => ({ ...h, ...(i < off.length && { off: off.slice(i, i + 1) }) })),
        appointments: [{ ...engaged, what: 'delivery', hands: ['owner'], brings: [], takes: [] }],
        rooms: book.shop.rooms.map((r) => (r.id === 'cold' && turn !== null ? { ...r, open: turn } : r)),
      },
      pieces: book.pieces.map((piece, i) => ({
        ...piece,
        ...(i === 0 && away !== null && { away: [{ ...away, at: 'upholsterer' }] }),
        sections: piece.sections.map((section) =>
          section.id === 'legs' && sectionAway !== null
            ? { ...section, away: [{ ...sectionAway, at: 'turner' }] }
            : section,
        ),
      })),
    }));
}

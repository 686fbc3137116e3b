import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import type { Book } from '../../src/model/book.ts';
import type { Hours } from '../../src/model/shop.ts';
import { changed } from '../../src/planning/change.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { waysOut } from '../../src/planning/ways-out.ts';
import { anyBook, now } from '../support/random-shop.ts';

const long = process.env['DRYBENCH_LONG'] === '1';

interface Trouble {
  readonly tempC: number;
  readonly rhPercent: number;
  readonly openMinutes: number;
}

/** Rooms that may be too cold or too damp, days that may be too short. */
const troubles: fc.Arbitrary<Trouble> = fc.record({
  tempC: fc.constantFrom(-5, 2, 8, 14, 20),
  rhPercent: fc.constantFrom(50, 80, 100),
  openMinutes: fc.constantFrom(5, 20, 90, 480),
});

function troubled(book: Book, { tempC, rhPercent, openMinutes }: Trouble): Book {
  const spans = [{ from: 9 * 60, to: 9 * 60 + openMinutes }];
  const week = { monday: spans, tuesday: spans, wednesday: spans, thursday: spans, friday: spans };
  const hours: Hours = { week: { ...week, saturday: [], sunday: [] }, days: {} };
  const { shop } = book;
  return {
    ...book,
    shop: {
      ...shop,
      opening: hours,
      hands: shop.hands.map((hand) => ({ ...hand, hours })),
      rooms: shop.rooms.map((room) => ({ ...room, air: { kind: 'constant', tempC, rhPercent } })),
    },
  };
}

function madeFrom(book: Book) {
  return makePlan(situationOf(book, now), { seed: 1, steps: 1 });
}

test('where there is no plan there are always two ways out, and each, made to the shop, leaves a plan', () => {
  let stuck = 0;
  fc.assert(
    fc.property(anyBook(3, 4), troubles, (whole, trouble) => {
      const book = troubled(whole, trouble);
      const made = madeFrom(book);
      if (made.kind !== 'none') return;
      stuck += 1;
      const ways = waysOut(now, made, 1);
      expect(ways.length).toBe(2);
      expect(new Set(ways.map((way) => JSON.stringify(way))).size).toBe(2);
      for (const way of ways) expect(madeFrom(way.reduce(changed, book)).kind).toBe('plan');
    }),
    { seed: 20270122, numRuns: long ? 500 : 25, endOnFailure: true },
  );
  expect(stuck).toBeGreaterThan(long ? 200 : 10);
});

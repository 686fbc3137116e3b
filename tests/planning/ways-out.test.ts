import { describe, expect, test } from 'vitest';
import type { Book } from '../../src/model/book.ts';
import { changed } from '../../src/planning/change.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { waysOut } from '../../src/planning/ways-out.ts';
import { namesOf } from '../../src/reports/names.ts';
import { sayWaysOut } from '../../src/reports/no-plan.ts';
import { demoBook, demoNow } from './demo.ts';

function madeFrom(book: Book) {
  return makePlan(situationOf(book, demoNow), { seed: 1, steps: 1 });
}

/** The demo shop with only its first piece. */
function small(change: (book: Book) => Book): Book {
  const book = demoBook();
  return change({ ...book, pieces: book.pieces.slice(0, 1) });
}

const shortDays = small((book) => {
  const spans = [{ from: 9 * 60, to: 9 * 60 + 20 }];
  const workday = { monday: spans, tuesday: spans, wednesday: spans, thursday: spans, friday: spans };
  const opening = { week: { ...workday, saturday: [], sunday: [] }, days: {} };
  return { ...book, shop: { ...book.shop, opening } };
});

const coldRooms = small((book) => ({
  ...book,
  shop: {
    ...book.shop,
    rooms: book.shop.rooms.map((room) => ({ ...room, air: { kind: 'constant', tempC: 7, rhPercent: 60 } as const })),
  },
}));

/** No single change helps three pieces in rooms that freeze. */
const frozen = (() => {
  const book = demoBook();
  const pieces = book.pieces.slice(0, 3);
  const rooms = book.shop.rooms.map((room) => ({
    ...room,
    air: { kind: 'constant', tempC: 0, rhPercent: 100 } as const,
  }));
  return { ...book, pieces, shop: { ...book.shop, rooms } };
})();

describe('ways out where there is no plan', () => {
  test.each([
    ['days too short for a coat', shortDays, /be open for .* at a time, day after day or plan without/],
    ['three pieces stuck by themselves', frozen, /^to have a plan: .* or plan without .* and .* and .* for now/],
    ['rooms too cold for any coat', coldRooms, /^to have a plan: warm Workshop by 3 °C or plan without/],
  ])('%s: each of them, made to the shop, leaves a plan', (_, book, expected) => {
    const made = madeFrom(book);
    if (made.kind !== 'none') throw new Error(`there should be no plan, but: ${made.kind}`);
    const ways = waysOut(demoNow, made, 1);
    expect(ways.length).toBe(2);
    expect(new Set(ways.map((way) => JSON.stringify(way))).size).toBe(ways.length);
    for (const way of ways) expect(madeFrom(way.reduce(changed, book)).kind).toBe('plan');
    const manner = { zone: book.shop.timeZone, now: demoNow, units: 'metric', clock: 24, currency: 'EUR' } as const;
    const said = sayWaysOut(ways, namesOf(book), manner);
    expect(said).toMatch(expected);
  });
});

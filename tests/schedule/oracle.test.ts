import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import { shopAir } from '../../src/air/shop-air.ts';
import type { Book } from '../../src/model/book.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { planShop } from '../../src/schedule/plan-shop.ts';
import { now, wholeHours } from './tiny-shops.ts';
import { tryAll } from './try-all.ts';

const long = process.env['DRYBENCH_LONG'] === '1';
const DAY = 1440;

interface Tally {
  possible: number;
  impossible: number;
}

/** Holds the planner's answer, and its proof, against the cheapest of all plans that there are. */
function agrees(book: Book, days: number, gridMinutes: number, tally: Tally): void {
  const situation = situationOf(book, now);
  const to = now + days * DAY;
  const air = shopAir(book.shop, now - DAY, to + 21 * DAY);
  const draft = planShop(situation, air, { seed: 1, steps: 50_000, to, factors: new Map() });
  const cheapest = tryAll({ situation, air, to, gridMinutes });
  expect(draft.found).toBe(cheapest !== undefined);
  if (!draft.found || cheapest === undefined) {
    expect(draft).toMatchObject({ found: false, proven: true });
    tally.impossible += 1;
    return;
  }
  const { objective, proven } = draft.proof;
  expect(objective.at(-1)).toEqual({ name: 'all', value: cheapest.value, bound: cheapest.value });
  expect(proven).toBe(true);
  tally.possible += 1;
}

/** So many shops in one go; the long run has more goes. */
const shops = long ? 250 : 30;
const goes = long ? 8 : 1;

test.each(Array.from({ length: goes }, (_, k) => k + 1))(
  'the plan of a small shop costs as much as the cheapest of all plans, and is proven to: go %i',
  (go) => {
    const tally = { possible: 0, impossible: 0 };
    fc.assert(
      fc.property(wholeHours, (book) => {
        agrees(book, 4, 60, tally);
      }),
      { seed: 20270115 + go, numRuns: shops },
    );
    // Neither kind may die out unnoticed.
    expect(Math.min(tally.possible, tally.impossible)).toBeGreaterThan(shops / 8);
  },
);

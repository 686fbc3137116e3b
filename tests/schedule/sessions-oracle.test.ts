import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import { shopAir } from '../../src/air/shop-air.ts';
import type { Book } from '../../src/model/book.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { planShop } from '../../src/schedule/plan-shop.ts';
import { now, sharing } from './tiny-shops.ts';
import { tryAll } from './try-all.ts';

const long = process.env['DRYBENCH_LONG'] === '1';
const DAY = 1440;
/** Two openings, in which two coats and what they wait for find room, or do not. */
const DAYS = 2;
const GRID_MINUTES = 20;

interface Tally {
  shared: number;
  apart: number;
  impossible: number;
}

/** Holds the planner's answer against the cheapest of all plans, coats by themselves and in all sessions that there can be. */
function agrees(book: Book, tally: Tally): void {
  const situation = situationOf(book, now);
  const to = now + DAYS * DAY;
  const air = shopAir(book.shop, now - DAY, to + 21 * DAY);
  const draft = planShop(situation, air, { seed: 1, steps: 50_000, to, factors: new Map() });
  const cheapest = tryAll({ situation, air, to, gridMinutes: GRID_MINUTES });
  expect(draft.found).toBe(cheapest !== undefined);
  if (!draft.found || cheapest === undefined) {
    expect(draft).toMatchObject({ found: false, proven: true });
    tally.impossible += 1;
    return;
  }
  const { objective, proven } = draft.proof;
  expect(objective.at(-1)).toEqual({ name: 'all', value: cheapest.value, bound: cheapest.value });
  expect(proven).toBe(true);
  if (draft.sessions === undefined) tally.apart += 1;
  else tally.shared += 1;
}

/** So many shops in one go; the long run has more goes. */
const shops = long ? 250 : 30;
const goes = long ? 4 : 1;

test.each(Array.from({ length: goes }, (_, k) => k + 1))(
  'the plan of a small shop costs as much as the cheapest of all plans with all choices of who shares a mixing: go %i',
  (go) => {
    const tally = { shared: 0, apart: 0, impossible: 0 };
    fc.assert(
      fc.property(sharing, (book) => {
        agrees(book, tally);
      }),
      { seed: 20270120 + go, numRuns: shops },
    );
    // No kind may die out unnoticed.
    expect(Math.min(tally.shared, tally.apart, tally.impossible)).toBeGreaterThan(shops / 20);
  },
);

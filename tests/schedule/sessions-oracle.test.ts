import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import { cheapestOfAll } from './cheapest.ts';
import { sharing } from './tiny-shops.ts';

const long = process.env['DRYBENCH_LONG'] === '1';
/** Two openings, in which two coats and what they wait for find room, or do not. */
const DAYS = 2;
const GRID_MINUTES = 20;

/** So many shops in one go; the long run has more goes. */
const shops = long ? 250 : 30;
const goes = long ? 4 : 1;

test.each(Array.from({ length: goes }, (_, k) => k + 1))(
  'the plan of a small shop costs as much as the cheapest of all plans with all choices of who shares a mixing: go %i',
  (go) => {
    const tally = { shared: 0, apart: 0, impossible: 0 };
    fc.assert(
      fc.property(sharing, (book) => {
        const plan = cheapestOfAll(book, DAYS, GRID_MINUTES);
        if (plan === undefined) tally.impossible += 1;
        else if (plan.sessions === undefined) tally.apart += 1;
        else tally.shared += 1;
      }),
      { seed: 20270120 + go, numRuns: shops, endOnFailure: true },
    );
    // No kind may die out unnoticed.
    expect(Math.min(tally.shared, tally.apart, tally.impossible)).toBeGreaterThan(shops / 20);
  },
);

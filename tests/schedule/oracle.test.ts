import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import { cheapestOfAll } from './cheapest.ts';
import { wholeHours } from './tiny-shops.ts';

const long = process.env['DRYBENCH_LONG'] === '1';

/** So many shops in one go; the long run has more goes. */
const shops = long ? 250 : 30;
const goes = long ? 8 : 1;

test.each(Array.from({ length: goes }, (_, k) => k + 1))(
  'the plan of a small shop costs as much as the cheapest of all plans, and is proven to: go %i',
  (go) => {
    const tally = { possible: 0, impossible: 0 };
    fc.assert(
      fc.property(wholeHours, (book) => {
        if (cheapestOfAll(book, 4, 60) === undefined) tally.impossible += 1;
        else tally.possible += 1;
      }),
      { seed: 20270115 + go, numRuns: shops, endOnFailure: true },
    );
    // Neither kind may die out unnoticed.
    expect(Math.min(tally.possible, tally.impossible)).toBeGreaterThan(shops / 8);
  },
);

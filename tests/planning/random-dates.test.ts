import { expect, test } from 'vitest';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import fc from '../support/property.ts';
import { anyDatedBook } from '../support/random-dates.ts';
import { now } from '../support/random-shop.ts';

const long = process.env['DRYBENCH_LONG'] === '1';

test('plans around days off, appointments, hired rooms and stays away pass the verifier', () => {
  let planned = 0;
  fc.assert(
    fc.property(anyDatedBook(3, 5), (book) => {
      const made = makePlan(situationOf(book, now), { seed: 1, steps: 100 });
      if (made.kind === 'broken') throw new Error(made.breaches.map((b) => `${b.rule}: ${b.text}`).join('\n'));
      if (made.kind === 'plan') planned += 1;
    }),
    { seed: 20270116, numRuns: long ? 1000 : 15 },
  );
  expect(planned).toBeGreaterThan(long ? 500 : 7);
});

import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { anyBook, now } from '../support/random-shop.ts';

const long = process.env['DRYBENCH_LONG'] === '1';

test('every plan of a random shop passes the verifier, and its bound is no more than its value', () => {
  let planned = 0;
  fc.assert(
    fc.property(anyBook(4, 6), (book) => {
      const made = makePlan(situationOf(book, now), { seed: 1, steps: 300 });
      if (made.kind === 'broken') throw new Error(made.breaches.map((b) => `${b.rule}: ${b.text}`).join('\n'));
      if (made.kind === 'none') return;
      planned += 1;
      for (const { value, bound } of made.plan.proof.objective) expect(bound).toBeLessThanOrEqual(value);
    }),
    { seed: 20270114, numRuns: long ? 2000 : 25 },
  );
  expect(planned).toBeGreaterThan(long ? 1500 : 15);
});

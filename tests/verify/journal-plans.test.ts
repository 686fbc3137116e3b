import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { anyIntents, entriesOf } from '../support/random-journal.ts';
import { anyBook, now } from '../support/random-shop.ts';

const numRuns = process.env['DRYBENCH_LONG'] === '1' ? 200 : 25;

test('a plan made after any journal keeps every rule', () => {
  let planned = 0;
  fc.assert(
    fc.property(anyBook(2, 5), anyIntents, (book, intents) => {
      const situation = situationOf({ ...book, journal: entriesOf(book, intents, now) }, now);
      const made = makePlan(situation, { seed: 1, steps: 100 });
      if (made.kind === 'broken') throw new Error(made.breaches.map((b) => `${b.rule}: ${b.text}`).join('\n'));
      if (made.kind === 'plan') planned += 1;
      // No entry makes a shop impossible: where there is no plan, there was none before anything was entered either.
      else expect(makePlan(situationOf(book, now), { seed: 1, steps: 100 }).kind).toBe('none');
    }),
    { seed: 20270114, numRuns, endOnFailure: true },
  );
  expect(planned).toBeGreaterThan(numRuns * 0.9);
});

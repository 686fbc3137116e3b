import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import type { Plan, PlannedStep } from '../../src/model/plan.ts';
import { planWith, situation, tasks } from './base.ts';
import { planOf, shop } from './fixture.ts';
import { holdsByOracle } from './oracle.ts';
import { broken } from './support.ts';

// The gate is not the oracle's business.
const of = { ...situation, leadTests: new Map([['desk', { at: 0, found: false }]]) };

type Change = (step: PlannedStep) => PlannedStep | undefined;

const shifted =
  (minutes: number): Change =>
  (step) => ({
    ...step,
    spans: step.spans.map(({ start, end }) => ({ start: start + minutes, end: end + minutes })),
  });
const placedAt =
  (station: (typeof shop.stations)[number]): Change =>
  (step) => ({
    ...step,
    station: station.id,
    room: station.room,
  });
const by =
  (hands: readonly string[]): Change =>
  (step) => ({ ...step, hands });
const dropped: Change = () => undefined;

const change: fc.Arbitrary<Change> = fc.oneof(
  { weight: 4, arbitrary: fc.integer({ min: -3, max: 3 }).map(shifted) },
  { weight: 4, arbitrary: fc.integer({ min: -24, max: 24 }).map((k) => shifted(15 * k)) },
  { weight: 2, arbitrary: fc.integer({ min: -2, max: 2 }).map((days) => shifted(1440 * days)) },
  { weight: 3, arbitrary: fc.constantFrom(...shop.stations).map(placedAt) },
  { weight: 3, arbitrary: fc.subarray(shop.hands.map((h) => h.id)).map(by) },
  { weight: 1, arbitrary: fc.constant(dropped) },
);

const base = planWith().steps;
const changedPlan: fc.Arbitrary<Plan> = fc
  .array(fc.tuple(fc.nat(base.length - 1), change), { minLength: 1, maxLength: 3 })
  .map((changes) => {
    const steps: (PlannedStep | undefined)[] = [...base];
    for (const [i, alter] of changes) {
      const step = steps[i];
      if (step !== undefined) steps[i] = alter(step);
    }
    return planOf(steps.filter((s) => s !== undefined));
  });

test('the oracle holds the base plan for right', () => {
  expect(holdsByOracle(planWith(), Object.values(tasks), of.book.materials)).toBe(true);
});

test('verifier and oracle agree on any plan made by shifting, moving, re-staffing and dropping steps', () => {
  const seen = { right: 0, wrong: 0 };
  fc.assert(
    fc.property(changedPlan, (plan) => {
      const right = holdsByOracle(plan, Object.values(tasks), of.book.materials);
      seen[right ? 'right' : 'wrong'] += 1;
      expect(broken(plan, of).length === 0).toBe(right);
    }),
    { numRuns: 300 },
  );
  expect(Math.min(seen.right, seen.wrong)).toBeGreaterThan(2);
});

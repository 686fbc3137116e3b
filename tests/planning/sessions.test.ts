import { expect, test } from 'vitest';
import { makePlan } from '../../src/planning/make-plan.ts';
import { savedMinutes } from '../../src/reports/sessions.ts';
import { demoPlan } from './demo.ts';

test('the first week of the demo shop saves an hour of mixing and washing up, and keeps every rule', () => {
  const { plan, situation } = demoPlan();
  const week = { start: situation.now, end: situation.now + 7 * 24 * 60 };
  expect(savedMinutes(plan, week)).toBeGreaterThanOrEqual(60);
  expect(plan.pieces.filter((p) => p.lateHours > 0)).toEqual([]);

  const again = makePlan(situation, { seed: 1, kept: plan });
  if (again.kind !== 'plan') throw new Error(again.kind);
  expect(again.plan.sessions).toEqual(plan.sessions);
});

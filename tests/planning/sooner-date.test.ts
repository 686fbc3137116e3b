import { expect, test } from 'vitest';
import type { Plan } from '../../src/model/plan.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { demoBook, demoNow } from './demo.ts';

const book = demoBook();
const days = (count: number) => count * 24 * 60;

function planOf(wanted: Readonly<Record<string, number>>, kept?: Plan, anew = false): Plan {
  const pieces = book.pieces.map((p) => {
    const inDays = wanted[p.id];
    return inDays === undefined ? p : { ...p, wantedBy: demoNow + days(inDays) };
  });
  const made = makePlan(situationOf({ ...book, pieces }, demoNow), { seed: 1, anew, ...(kept && { kept }) });
  if (made.kind !== 'plan') throw new Error(made.kind);
  return made.plan;
}

function lateHours({ pieces }: Plan): number {
  return pieces.reduce((sum, p) => sum + p.lateHours, 0);
}

function startsOf({ steps }: Plan): Map<string, number | undefined> {
  return new Map(steps.map((s) => [s.id, s.spans[0]?.start]));
}

test('a piece wanted sooner than planned is as little late as in a plan from nothing, and more of the rest stays', () => {
  const followed = planOf({});
  const before = startsOf(followed);
  for (const wanted of [{ 'kitchen-chairs': 21 }, { 'slat-bed': 23 }]) {
    const anew = planOf(wanted);
    const least = lateHours(anew);
    const near = planOf(wanted, followed);
    expect(lateHours(near)).toBeLessThanOrEqual(least + 1);
    const stay = (plan: Plan) => [...startsOf(plan)].filter(([id, start]) => before.get(id) === start).length;
    expect(stay(near)).toBeGreaterThan(2 * stay(anew));
    expect(lateHours(planOf(wanted, followed, true))).toBeLessThanOrEqual(least + 1);
  }
});

import { expect, it } from 'vitest';
import { compareWith, type Wish } from '../../src/planning/compare.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { promiseOf } from '../../src/planning/promise.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { demoBook, demoNow, demoPlan } from './demo.ts';

const DAY = 24 * 60;
const seed = 1;

/** Asked to end as soon as it has been called so often. */
function after(calls: number): () => boolean {
  let left = calls;
  return () => --left < 0;
}

it('a plan near the one that was kept ends with what its first look finds, where that is asked for', () => {
  const [kept, later] = [demoPlan().plan, demoNow + 3 * DAY];
  let found = 0;
  const onBetter = () => (found += 1);
  const stop = () => found > 0;
  const made = makePlan(situationOf(demoBook(), later), { seed, kept, onBetter, stop });
  expect(made.kind).toBe('plan');
  // The plan that stays where it can, and the one that lies by the old order.
  expect(found).toBeLessThanOrEqual(2);
});

it('a comparison that is cut short has what was looked at, and calls nothing the best', () => {
  const wishes = [1, 2, 3].map((byK): Wish => ({
    name: `${byK}`,
    said: `${byK}`,
    costMinor: 100,
    changes: [{ kind: 'warmer', room: 'garage', byK }],
  }));
  const seen: string[] = [];
  let isCut = false;
  const compared = compareWith(demoBook(), demoNow, demoPlan().plan, wishes, {
    seed,
    minorPerMajor: 100,
    onPlan: (plan, of) => seen.push(`${plan} of ${of}`),
    stop: () => isCut,
    onVariant: () => (isCut = seen.length === 3),
  });
  expect(seen).toEqual(['1 of 4', '2 of 4', '3 of 4']);
  expect(compared.variants.map(({ wish, plan }) => [wish.name, plan !== undefined])).toEqual([
    ['1', true],
    ['2', true],
  ]);
  expect(compared.best).toBeUndefined();
});

it('a promise that is cut short asks no further', () => {
  const [piece] = demoBook().pieces;
  if (piece === undefined) throw new Error('the demo has pieces');
  const { wantedBy, ...newcomer } = { ...piece, id: 'newcomer', name: 'Newcomer' };
  expect(wantedBy).toBeDefined();
  const answer = promiseOf(demoBook(), demoNow, demoPlan().plan, newcomer, demoNow + DAY, { seed, stop: after(0) });
  expect(answer.kept).toBe(false);
  expect(answer.offer).toBeDefined();
  expect(answer.sooner).toBeUndefined();
});

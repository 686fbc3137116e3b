import { expect, it } from 'vitest';
import { restore } from '../../src/engine/improve.ts';
import { reorder } from '../../src/engine/reorder.ts';
import { reorderAll } from '../../src/engine/reorder-all.ts';
import { violations } from '../../src/engine/valid.ts';
import { valueOf } from '../../src/engine/value.ts';
import { firstPlan } from './first-plan.ts';
import { shopLike } from './shop-like.ts';

/** A shop's plan from its first order. */
function planned(seed: number) {
  const problem = shopLike(8, seed);
  const { search, incumbent } = firstPlan(problem);
  return { problem, search, incumbent, key: Float64Array.from(search.plan.starts) };
}

/** And from orders changed for so many steps. */
function reordered(seed: number, steps: number) {
  const { problem, search, incumbent, key } = planned(seed);
  const first = incumbent.value;
  reorder(search, { seed: 1, steps }, incumbent, key, steps);
  const last = search.plan.schedule();
  restore(search, incumbent);
  return { problem, first, last, best: search.plan.schedule(), value: incumbent.value };
}

it.each([3, 4, 5])('whole orders tried anew keep every rule and find a cheaper plan (shop %i)', (seed) => {
  const { problem, first, last, best, value } = reordered(seed, 40_000);
  expect(violations(problem, last)).toEqual([]);
  expect(violations(problem, best)).toEqual([]);
  expect(valueOf(problem, best)).toBe(value);
  expect(value).toBeLessThan(first);
});

it('the same seed tries the same orders', () => {
  expect(reordered(6, 8000).last).toEqual(reordered(6, 8000).last);
});

it('once it is to stop, no other order is begun', () => {
  const { search, incumbent, key } = planned(6);
  const orders = Array.from({ length: 20 }, () => ({ key, value: incumbent.value }));
  const { inserter } = search;
  const begun = inserter.steps;
  const most = begun + 1000;
  reorderAll(search, { seed: 1, steps: 8000, stop: () => inserter.steps >= most }, incumbent, orders);
  expect(inserter.steps).toBeGreaterThanOrEqual(most);
  // It is asked again after four tries, each of which places everything at most.
  expect(inserter.steps - most).toBeLessThanOrEqual(5 * (search.net.count + 1));
});

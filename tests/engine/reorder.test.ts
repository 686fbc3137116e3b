import { expect, it } from 'vitest';
import { construct, componentOrders } from '../../src/engine/construct.ts';
import { keep, noneYet, restore } from '../../src/engine/improve.ts';
import { Labels } from '../../src/engine/labels.ts';
import { netOf } from '../../src/engine/net.ts';
import { reorder } from '../../src/engine/reorder.ts';
import { searchOf } from '../../src/engine/search.ts';
import { violations } from '../../src/engine/valid.ts';
import { valueOf } from '../../src/engine/value.ts';
import { shopLike } from './shop-like.ts';

/** A shop's plan from its first order, and from orders changed for so many steps. */
function reordered(seed: number, steps: number) {
  const problem = shopLike(8, seed);
  const net = netOf(problem);
  const labels = new Labels(net);
  labels.propagate();
  const search = searchOf(net, labels, 1);
  const incumbent = noneYet(net.count, search.costs.bound);
  const [order = []] = componentOrders(search);
  construct(search, order);
  keep(search, { seed: 1, steps }, incumbent);
  const first = incumbent.value;
  reorder(search, { seed: 1, steps }, incumbent, Float64Array.from(search.plan.starts), steps);
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

import { describe, expect, it } from 'vitest';
import { canSettleDays, settleDays, type Told } from '../../src/engine/arrange.ts';
import { placementsOfOne } from '../../src/engine/day-by-day.ts';
import { followOrders } from '../../src/engine/follow-orders.ts';
import type { Incumbent } from '../../src/engine/improve.ts';
import { priceBound } from '../../src/engine/prices/price-bound.ts';
import { scheduleOf } from '../../src/engine/schedule-of.ts';
import { violations } from '../../src/engine/valid.ts';
import { valueOf } from '../../src/engine/value.ts';
import { firstPlan } from './first-plan.ts';
import { shopLike } from './shop-like.ts';

/** A shop with a first plan, and what prices have told about it. */
function told(seed: number, pieces = 12) {
  const problem = shopLike(pieces, seed);
  const { search, incumbent } = firstPlan(problem);
  const { net, labels, structure } = search;
  const horizon = Math.max(...incumbent.starts);
  const priced = priceBound(net, labels, structure, incumbent, horizon, { work: 20_000_000, orders: 12 });
  const orders = followOrders(search, { seed: 1, steps: 0 }, incumbent, priced.orders);
  return { problem, net, search, incumbent, told: { orders, market: priced.market } satisfies Told };
}

/** The incumbent once days have been settled for as long as so many placements take, or until it is to stop. */
function settled(seed: number, placements: number, stop?: () => boolean) {
  const { problem, net, search, incumbent, told: known } = told(seed);
  const before = incumbent.value;
  const options = { seed: 1, steps: 0, ...(stop !== undefined && { stop }) };
  if (!canSettleDays(search, known)) throw new Error('days cannot be settled in this shop');
  settleDays(search, options, incumbent, known, placements);
  return { problem, before, value: incumbent.value, schedule: scheduleOf(net, incumbent), search };
}

/** Says so once it has been asked so often. */
function after(asked: number): () => boolean {
  let left = asked;
  return () => --left < 0;
}

describe('settling day after day', () => {
  it('keeps every rule and finds a cheaper plan than the orders alone', () => {
    const { problem, before, value, schedule } = settled(3, 200_000);
    expect(violations(problem, schedule)).toEqual([]);
    expect(valueOf(problem, schedule)).toBe(value);
    expect(value).toBeLessThan(before);
  });

  it('is done alike with the same seed', () => {
    expect(settled(3, 1e9, after(250)).schedule).toEqual(settled(3, 1e9, after(250)).schedule);
  });

  it('ends soon after it is to stop, and keeps what it has', () => {
    const { problem, before, value, schedule, search } = settled(3, 1e9, after(30));
    expect(violations(problem, schedule)).toEqual([]);
    expect(value).toBeLessThanOrEqual(before);
    // Each time it is asked, a few orders at most have been placed since.
    expect(search.inserter.steps).toBeLessThan(60 * 10 * search.net.count);
  });

  it('is for fine prices and many activities', () => {
    const { search, told: known } = told(3);
    expect(canSettleDays(search, known)).toBe(true);
    expect(canSettleDays(search, { ...known, market: undefined })).toBe(false);
    expect(canSettleDays(search, { ...known, orders: [] })).toBe(false);
    const few = told(3, 4);
    expect(canSettleDays(few.search, few.told)).toBe(false);
  });
});

it('one plan is taken to need more placements the longer it is', () => {
  const { search, incumbent } = told(3);
  const longer: Incumbent = { ...incumbent, starts: incumbent.starts.map((start) => start + 7 * 24 * 60) };
  expect(placementsOfOne(search, longer)).toBeGreaterThan(placementsOfOne(search, incumbent));
});

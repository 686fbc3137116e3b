import { at } from '../at.ts';
import { placingOrder } from './order.ts';
import type { SearchOptions } from './problem.ts';
import { removeAll, type Search } from './search.ts';

/** How often `stop` is asked, in orders tried. */
const stopEvery = 4;

/** What is laid in one order after another, and what is done about it. */
export interface Trials {
  /** What is laid; all else stays where it is. */
  readonly list: readonly number[];
  /** The order that it lies in, and what that costs. */
  readonly key: Float64Array;
  readonly cost: number;
  readonly changed: (key: Float64Array) => Float64Array;
  /** What the plan costs that has just been laid. */
  readonly costOf: () => number;
  /** Told of each order that is gone on from; the plan lies in it. */
  readonly onKept: (key: Float64Array, cost: number) => void;
  /** How much dearer than the last kept a plan may be at first: a share of its cost, on the average. */
  readonly warmth: number;
  /** Which share of the trials is left after so many; none ends them. */
  readonly left: (tries: number) => number;
}

/**
 * Lays the same again and again in an order changed a little. An order is kept if what it leads to is not much dearer, and less so
 * as the trials run out; what comes before the first change stays where it is.
 */
export function tryOrders(search: Search, options: SearchOptions, trials: Trials): void {
  const { plan, inserter, random, structure } = search;
  const { list, changed, costOf, onKept, warmth, left } = trials;
  const ordered = (keys: Float64Array): number[] => placingOrder(structure, list, keys, false);
  let { key, cost } = trials;
  let order = ordered(key);
  const kept = plan.twin();
  for (let tries = 0, share = left(0); share > 0; tries++, share = left(tries)) {
    if ((tries + 1) % stopEvery === 0 && options.stop?.() === true) return;
    const limit = cost - Math.log(1 - random.unit()) * warmth * share * Math.abs(cost);
    const nextKey = changed(key);
    const next = ordered(nextKey);
    const from = next.findIndex((i, k) => i !== at(order, k));
    inserter.steps += 1;
    if (from < 0) continue;
    // The last first, so that little lies behind what is taken out.
    removeAll(search, order.slice(from).reverse());
    const nextCost = inserter.insert(next.slice(from), Infinity) ? costOf() : Infinity;
    if (nextCost > limit) {
      plan.become(kept);
      continue;
    }
    kept.become(plan);
    [key, order, cost] = [nextKey, next, nextCost];
    onKept(key, cost);
  }
}

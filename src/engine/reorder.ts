import { moveMembers, shuffle, stretchOf } from './change-key.ts';
import { type Incumbent, keep } from './improve.ts';
import { placingOrder } from './order.ts';
import type { SearchOptions } from './problem.ts';
import { freeMembers, removeAll, type Search } from './search.ts';
import { DAY_MINUTES } from '../time/span.ts';
import { tryOrders } from './try-orders.ts';
import { real } from '../typed.ts';

/** Most minutes by which a component comes earlier or later, and how often it is drawn out or pressed together, too. */
const farthest = 4 * DAY_MINUTES;
const stretchShare = 0.6;
/** How often what lies within some days is shuffled instead, and by up to how many hours. */
const shuffleShare = 0.1;
const shuffleDays = 3;
const shuffleHours = 12;
/** How much dearer than the last kept a plan may be at first: a share of its value, on the average. */
const warmth = 0.0005;

/** An order of placing, and what the plan that it leads to costs. */
export interface Order {
  readonly key: Float64Array;
  readonly value: number;
}

export function cheapestFirst(orders: readonly Order[]): readonly Order[] {
  return [...orders].sort((a, b) => a.value - b.value);
}

/**
 * Places everything in the order of `first`, and again and again with one component earlier or later in the order. A few hundred
 * orders find what taking out parts of a plan does not: a whole that is arranged otherwise. Ends when the inserter has counted
 * `until` steps.
 */
export function reorder(
  search: Search,
  options: SearchOptions,
  incumbent: Incumbent,
  first: Float64Array,
  until: number,
): Order | undefined {
  const { plan, inserter } = search;
  const list = Array.from({ length: search.net.count }, (_, i) => i);
  const key = Float64Array.from(first, (own, i) => (search.pinned[i] === 1 ? -Infinity : own));
  removeAll(search, list);
  if (!inserter.insert(placingOrder(search.structure, list, key, false), Infinity)) return undefined;
  const costOf = (): number => {
    keep(search, options, incumbent);
    return plan.value;
  };
  let best: Order = { key, value: costOf() };
  const begun = inserter.steps;
  tryOrders(search, options, {
    list,
    key,
    cost: best.value,
    changed: (own) => changed(search, own),
    costOf,
    onKept: (own, value) => {
      if (value < best.value) best = { key: own, value };
    },
    warmth,
    left: () =>
      inserter.steps < until && incumbent.value > incumbent.bound ? 1 - (inserter.steps - begun) / (until - begun) : 0,
  });
  return best;
}

/** One component earlier or later, drawn out or pressed together; or what lies within some days shuffled. */
function changed(search: Search, key: Float64Array): Float64Array {
  const { structure, random } = search;
  const next = Float64Array.from(key);
  if (random.unit() < shuffleShare) {
    const from = real(key, random.below(key.length));
    const to = from + random.unit() * shuffleDays * DAY_MINUTES;
    const within = [...key.keys()].filter((i) => real(key, i) >= from && real(key, i) < to);
    shuffle(next, within, shuffleHours, random);
    return next;
  }
  const members = freeMembers(search, random.below(structure.components.length));
  const minutes = farthest * (2 * random.unit() - 1);
  moveMembers(next, members, minutes, stretchOf(random, stretchShare));
  return next;
}

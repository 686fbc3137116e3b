import { at } from '../at.ts';
import { type Incumbent, keep } from './improve.ts';
import { placingOrder } from './order.ts';
import type { SearchOptions } from './problem.ts';
import type { Random } from './random.ts';
import { freeMembers, removeAll, type Search } from './search.ts';
import { real } from '../typed.ts';

/** Most minutes by which a component comes earlier or later, and most by which it is drawn out or pressed together. */
const farthest = 4 * 24 * 60;
const stretchBy = 0.5;
const stretchShare = 0.6;
/** How often what lies within some days is shuffled instead, and by up to how many hours either way. */
const shuffleShare = 0.1;
const shuffleDays = 3;
const shuffleHours = 6;
/** How much dearer than the last kept a plan may be at first: a share of its value, on the average. */
const warmth = 0.0005;
/** How often `stop` is asked, in orders tried. */
const stopEvery = 4;

/** An order of placing, and what the plan that it leads to costs. */
export interface Order {
  readonly key: Float64Array;
  readonly value: number;
}

export function cheapestFirst(orders: readonly Order[]): readonly Order[] {
  return [...orders].sort((a, b) => a.value - b.value);
}

/**
 * Places everything in the order of `first`, and again and again with one component earlier or later in the order. An
 * order is kept if what it leads to is not much dearer, and less so as the budget runs down; what comes before the first
 * change stays where it is. A few hundred orders find what taking out parts of a plan does not: a whole that is
 * arranged otherwise. Ends when the inserter has counted `until` steps.
 */
export function reorder(
  search: Search,
  options: SearchOptions,
  incumbent: Incumbent,
  first: Float64Array,
  until: number,
): Order | undefined {
  const { plan, inserter, random } = search;
  const everything = Array.from({ length: search.net.count }, (_, i) => i);
  const ordered = (keys: Float64Array): number[] => placingOrder(search.structure, everything, keys, false);
  let key = Float64Array.from(first, (own, i) => (search.pinned[i] === 1 ? -Infinity : own));
  let order = ordered(key);
  removeAll(search, everything);
  if (!inserter.insert(order, Infinity)) return undefined;
  const kept = plan.twin();
  keep(search, options, incumbent);
  let value = plan.value;
  let best = { key, value };
  const begun = inserter.steps;
  for (let tries = 1; inserter.steps < until && incumbent.value > incumbent.bound; tries++) {
    if (tries % stopEvery === 0 && options.stop?.() === true) break;
    const left = 1 - (inserter.steps - begun) / (until - begun);
    const limit = value - Math.log(1 - random.unit()) * warmth * left * Math.abs(value);
    const nextKey = changed(search, key);
    const next = ordered(nextKey);
    const from = next.findIndex((i, k) => i !== at(order, k));
    inserter.steps += 1;
    if (from < 0) continue;
    // The last first, so that little lies behind what is taken out.
    removeAll(search, order.slice(from).reverse());
    if (!inserter.insert(next.slice(from), Infinity) || plan.value > limit) {
      plan.become(kept);
      continue;
    }
    kept.become(plan);
    keep(search, options, incumbent);
    value = plan.value;
    key = nextKey;
    order = next;
    if (value < best.value) best = { key, value };
  }
  return best;
}

/** One component earlier or later, drawn out or pressed together; or what lies within some days shuffled. */
function changed(search: Search, key: Float64Array): Float64Array<ArrayBuffer> {
  const { structure, random } = search;
  const next = Float64Array.from(key);
  if (random.unit() < shuffleShare) {
    shuffle(next, real(key, random.below(key.length)), random);
    return next;
  }
  const members = freeMembers(search, random.below(structure.components.length));
  const shift = farthest * (2 * random.unit() - 1);
  const stretch = random.unit() < stretchShare ? 1 + stretchBy * (2 * random.unit() - 1) : 1;
  const begin = members.reduce((least, i) => Math.min(least, real(key, i)), Infinity);
  for (const i of members) next[i] = begin + (real(key, i) - begin) * stretch + shift;
  return next;
}

function shuffle(key: Float64Array, from: number, random: Random): void {
  const to = from + random.unit() * shuffleDays * 24 * 60;
  const noise = 60 * (1 + random.below(2 * shuffleHours));
  for (let i = 0; i < key.length; i++) {
    const own = real(key, i);
    if (own >= from && own < to) key[i] = own + noise * (random.unit() - 0.5);
  }
}

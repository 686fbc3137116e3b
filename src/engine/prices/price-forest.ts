import { at } from '../../at.ts';
import { int, real } from '../../typed.ts';
import { type Forest, never, type Offers, type PricedMode, type PricedNode, type Tree } from './forest.ts';
import type { Shape } from './shapes.ts';

/** Told of each activity where its cheapest start lies: in which shape and bucket. */
export type Take = (activity: number, shape: Shape, bucket: number) => void;

/**
 * Least total cost at the prices in the shapes: what is worth paying for the resources, and costs and terms. `take` is told of
 * every activity's part in it. All that may start before bucket `from` must be settled.
 */
export function priceForest(forest: Forest, take: Take, from = 0): number {
  let total = 0;
  for (const tree of forest.trees) {
    total += priceTree(forest, tree, from);
    trace(forest, tree, take);
  }
  return total;
}

/** Least cost of one component; as in `priceForest`. */
export function priceTree(forest: Forest, { nodes, cells }: Tree, from: number): number {
  let total = 0;
  forest.below.fill(0, 0, cells);
  for (const node of nodes) {
    const parent = node.parent < 0 ? undefined : at(nodes, node.parent);
    if (parent === undefined || isFixed(forest, parent)) total += priceRoot(forest, node);
    else priceChild(forest, node, parent, from);
  }
  return total;
}

/** Is it settled where the activity starts, and how? */
function isFixed({ fixed }: Forest, { activity }: PricedNode): boolean {
  return int(fixed, activity) !== never;
}

function priceRoot(forest: Forest, node: PricedNode): number {
  const { value, buckets } = forest;
  let least = Infinity;
  for (let k = 0; k < node.modes.length; k++) {
    const mode = at(node.modes, k);
    valueOf(forest, node, mode);
    const last = int(forest.shuts, mode.place);
    for (let b = int(forest.opens, mode.place); b <= last; b++) {
      if (real(value, b) >= least) continue;
      least = real(value, b);
      forest.choice[node.firstChoice] = k * buckets + b;
    }
  }
  return least;
}

/** Fills in what a start in each bucket costs in `mode`, all below it counted. */
function valueOf({ value, below, buckets, opens, shuts }: Forest, node: PricedNode, mode: PricedMode): void {
  const cell = node.cell + mode.class * buckets;
  const { price } = mode.shape;
  const { terms, cost, place } = mode;
  const [first, last] = [int(opens, place), int(shuts, place)];
  for (let b = first; b <= last; b++) value[b] = real(below, cell + b) + real(price, b) + cost;
  if (terms !== undefined) for (let b = first; b <= last; b++) value[b] = real(value, b) + real(terms, b);
}

function priceChild(forest: Forest, node: PricedNode, parent: PricedNode, first: number): void {
  const { buckets, below, choice } = forest;
  const offers = forest.offers.slice(0, at(node.modes, 0).parentStarts.length);
  for (const { from, within } of offers) {
    from.fill(Infinity, first);
    within.fill(Infinity, first);
  }
  for (let k = 0; k < node.modes.length; k++) {
    const mode = at(node.modes, k);
    if (int(forest.shuts, mode.place) === never) continue;
    valueOf(forest, node, mode);
    for (let c = 0; c < offers.length; c++) {
      const starts = at(mode.parentStarts, c);
      if (starts.last === undefined) offerFrom(forest, mode, k, first, starts.first, at(offers, c));
      else offerWithin(forest, mode, k, first, starts.first, starts.last, at(offers, c));
    }
  }
  for (let c = 0; c < offers.length; c++) {
    const { from, fromChoice, within, withinChoice } = at(offers, c);
    const own = node.firstChoice + c * buckets;
    const cell = parent.cell + c * buckets;
    let least = Infinity;
    let chosen = 0;
    for (let b = first; b < buckets; b++) {
      if (real(from, b) < least) {
        least = real(from, b);
        chosen = int(fromChoice, b);
      }
      const inside = real(within, b) < least;
      choice[own + b] = inside ? int(withinChoice, b) : chosen;
      below[cell + b] = real(below, cell + b) + (inside ? real(within, b) : least);
    }
  }
}

/** Offers each start of mode `k` to all parents from `first` on, and from bucket `least`. */
function offerFrom(
  forest: Forest,
  mode: PricedMode,
  k: number,
  least: number,
  first: Int32Array,
  offers: Offers,
): void {
  const { value, buckets } = forest;
  const { from, fromChoice } = offers;
  const last = int(forest.shuts, mode.place);
  for (let b = int(forest.opens, mode.place); b <= last; b++) {
    if (int(first, b) === never) continue;
    const bucket = Math.max(least, int(first, b));
    const cost = real(value, b);
    if (cost >= real(from, bucket)) continue;
    from[bucket] = cost;
    fromChoice[bucket] = k * buckets + b;
  }
}

/** Offers each start of mode `k` to the parents from `first` to `last`, both of which grow: the least in a sliding window. */
function offerWithin(
  forest: Forest,
  mode: PricedMode,
  k: number,
  least: number,
  first: Int32Array,
  last: Int32Array,
  offers: Offers,
): void {
  const { value, buckets, queue } = forest;
  const { within, withinChoice } = offers;
  let head = 0;
  let tail = 0;
  let next = int(forest.opens, mode.place);
  const final = int(forest.shuts, mode.place);
  for (let bucket = least; bucket < buckets; bucket++) {
    for (; next <= final && int(first, next) <= bucket; next++) {
      if (int(first, next) === never || real(value, next) === Infinity) continue;
      while (tail > head && real(value, int(queue, tail - 1)) >= real(value, next)) tail -= 1;
      queue[tail++] = next;
    }
    while (head < tail && int(last, int(queue, head)) < bucket) head += 1;
    if (head === tail) {
      if (next > final) break;
      continue;
    }
    const best = int(queue, head);
    if (real(value, best) >= real(within, bucket)) continue;
    within[bucket] = real(value, best);
    withinChoice[bucket] = k * buckets + best;
  }
}

/**
 * Finds, from the roots down, the mode and the bucket behind the least cost, and tells them from the leaves up. What starts together
 * with its parent, and costs nothing wherever it is, is told with what it waits for: an order of placing wants it next to that,
 * since all that is decided there is how the wait is spent.
 */
function trace(forest: Forest, { nodes }: Tree, take: Take): void {
  const { buckets, choice, chosenMode, chosenBucket, latestBefore } = forest;
  for (let k = nodes.length - 1; k >= 0; k--) {
    const node = at(nodes, k);
    let packed = int(choice, node.firstChoice);
    if (node.parent >= 0 && !isFixed(forest, at(nodes, node.parent))) {
      const above = at(at(nodes, node.parent).modes, int(chosenMode, node.parent));
      packed = int(choice, node.firstChoice + above.class * buckets + int(chosenBucket, node.parent));
    }
    chosenMode[k] = Math.floor(packed / buckets);
    chosenBucket[k] = packed % buckets;
    latestBefore[k] = 0;
  }
  for (let k = 0; k < nodes.length; k++) {
    const node = at(nodes, k);
    const mode = at(node.modes, int(chosenMode, k));
    const bucket = int(chosenBucket, k);
    take(node.activity, mode.shape, mode.joined ? Math.min(bucket, int(latestBefore, k)) : bucket);
    if (node.parent < 0) continue;
    latestBefore[node.parent] = Math.max(int(latestBefore, node.parent), bucket);
  }
}

import { at } from '../../at.ts';
import type { Minute } from '../../time/span.ts';
import { NEVER } from '../../time/time-map.ts';
import type { Labels } from '../labels.ts';
import type { Net } from '../net.ts';
import type { Structure } from '../structure.ts';
import type { Term } from '../problem.ts';
import { int, real } from '../../typed.ts';
import { termValue } from '../value.ts';
import { bucketLast, bucketOf, bucketStart, type Grid } from './grid.ts';
import type { Shape } from './shapes.ts';
import { waitsOf } from './trees.ts';
import { floorOf, type Wait } from './waits.ts';

/** Bucket of a parent that cannot start any more. */
const never = -1;

/** One mode of one activity, ready for pricing. */
interface PricedMode {
  readonly mode: number;
  readonly shape: Shape;
  readonly cost: number;
  readonly firstBucket: number;
  readonly lastBucket: number;
  /** By bucket: where its waiting parent can start at the earliest. */
  readonly parentBucket: Int32Array | undefined;
  /** By bucket: least the activity's terms can cost; absent without terms. */
  readonly terms: Float64Array | undefined;
}

/** An activity in the forest, children before parents. */
interface PricedNode {
  readonly activity: number;
  readonly parent: number;
  readonly modes: readonly PricedMode[];
}

/** All activities with their waits for at most one parent each, laid out on a grid. */
export interface Forest {
  readonly nodes: readonly PricedNode[];
  readonly buckets: number;
  /** By node and bucket: cost of all below it if it starts by then. */
  readonly below: Float64Array;
  /** By node and bucket: best mode (by place in `modes`) and bucket of a start that lets the parent start by then. */
  readonly choice: Int32Array;
  readonly chosenMode: Int32Array;
  readonly chosenBucket: Int32Array;
  /** By bucket: least cost of the node at hand. */
  readonly best: Float64Array;
}

/** Lays out the forest of waits. */
export function forestOf(
  net: Net,
  labels: Labels,
  structure: Structure,
  terms: readonly (readonly Term[])[],
  grid: Grid,
  byMode: readonly Shape[],
): Forest {
  const waits = waitsOf(net, labels, structure);
  const order = structure.components.flatMap((members) => [...members]);
  const place = new Int32Array(net.count);
  order.forEach((i, k) => (place[i] = k));
  const nodes = order.map((i): PricedNode => {
    const wait = waits[i];
    const modes: PricedMode[] = [];
    for (let m = int(net.modeFirst, i); m < int(net.modeFirst, i + 1); m++)
      if (labels.isOpen(m)) modes.push(pricedMode(net, labels, grid, at(byMode, m), m, wait, at(terms, i)));
    return { activity: i, parent: wait === undefined ? -1 : int(place, wait.parent), modes };
  });
  const cells = nodes.length * grid.count;
  return {
    nodes,
    buckets: grid.count,
    below: new Float64Array(cells),
    choice: new Int32Array(cells),
    chosenMode: new Int32Array(nodes.length),
    chosenBucket: new Int32Array(nodes.length),
    best: new Float64Array(grid.count),
  };
}

function pricedMode(
  net: Net,
  labels: Labels,
  grid: Grid,
  shape: Shape,
  m: number,
  wait: Wait | undefined,
  terms: readonly Term[],
): PricedMode {
  const { slots, cost } = at(net.modes, m);
  const first = labels.first(m);
  const local = m - int(net.modeFirst, at(net.modes, m).activity);
  const firstBucket = bucketOf(grid, first);
  const lastBucket = bucketOf(grid, labels.last(m));
  const parentBucket = wait === undefined ? undefined : new Int32Array(grid.count).fill(never);
  const termCosts = terms.length === 0 ? undefined : new Float64Array(grid.count);
  for (let b = firstBucket; b <= lastBucket; b++) {
    const start = slots.fit(Math.max(first, bucketStart(grid, b)));
    if (start === NEVER || start > Math.min(labels.last(m), bucketLast(grid, b))) continue;
    const end = slots.end(start);
    const last = slots.fitBack(Math.min(labels.last(m), bucketLast(grid, b)));
    const lastEnd = slots.end(last);
    if (parentBucket !== undefined && wait !== undefined) {
      const floor = floorOf(labels, wait, local, { first: start, last }, { first: end, last: lastEnd });
      parentBucket[b] = floor === NEVER ? never : bucketOf(grid, floor);
    }
    if (termCosts === undefined) continue;
    for (const term of terms)
      termCosts[b] =
        real(termCosts, b) +
        leastWithin(term, net.problem.from, start, end, last, lastEnd);
  }
  return { mode: m, shape, cost, firstBucket, lastBucket, parentBucket, terms: termCosts };
}

/** Least of `term` for starts from `start` to `last`, with ends from `end` to `lastEnd`. */
function leastWithin(term: Term, from: Minute, start: Minute, end: Minute, last: Minute, lastEnd: Minute): number {
  const [low, high] = term.kind === 'moved' ? [start, last] : [end, lastEnd];
  const corner = term.kind === 'moved' ? term.at : term.kind === 'late' ? term.due : low;
  const inner = Math.min(Math.max(corner, low), high);
  return Math.min(...[low, inner, high].map((t) => termValue(term, from, t, t)));
}

/** Least total cost at the prices in the shapes: what is worth paying for the resources, and costs and terms. */
export function priceForest(forest: Forest): number {
  const { nodes, buckets, below } = forest;
  below.fill(0);
  let total = 0;
  for (let k = 0; k < nodes.length; k++) {
    const node = at(nodes, k);
    if (node.parent < 0) total += priceRoot(forest, node, k * buckets);
    else priceChild(forest, node, k * buckets);
  }
  return total;
}

function priceRoot(forest: Forest, node: PricedNode, cell: number): number {
  let least = Infinity;
  for (let k = 0; k < node.modes.length; k++) {
    const mode = at(node.modes, k);
    for (let b = mode.firstBucket; b <= mode.lastBucket; b++) {
      const value = valueIn(forest, mode, cell, b);
      if (value >= least) continue;
      least = value;
      forest.choice[cell] = k * forest.buckets + b;
    }
  }
  return least;
}

function valueIn(forest: Forest, mode: PricedMode, cell: number, b: number): number {
  const terms = mode.terms === undefined ? 0 : real(mode.terms, b);
  return real(forest.below, cell + b) + real(mode.shape.price, b) + mode.cost + terms;
}

function priceChild(forest: Forest, node: PricedNode, cell: number): void {
  const { buckets, below, choice, best } = forest;
  best.fill(Infinity);
  for (let k = 0; k < node.modes.length; k++) {
    const mode = at(node.modes, k);
    const parentBucket = mode.parentBucket;
    if (parentBucket === undefined) continue;
    for (let b = mode.firstBucket; b <= mode.lastBucket; b++) {
      const bucket = int(parentBucket, b);
      if (bucket === never) continue;
      const value = valueIn(forest, mode, cell, b);
      if (value >= real(best, bucket)) continue;
      best[bucket] = value;
      choice[cell + bucket] = k * buckets + b;
    }
  }
  const parent = node.parent * buckets;
  let least = Infinity;
  let chosen = 0;
  for (let b = 0; b < buckets; b++) {
    if (real(best, b) < least) {
      least = real(best, b);
      chosen = int(choice, cell + b);
    } else choice[cell + b] = chosen;
    below[parent + b] = real(below, parent + b) + least;
  }
}

/** Fills in, from the roots down, the choice of mode and bucket behind the last `priceForest`. */
export function traceChoices(forest: Forest): void {
  const { nodes, buckets, choice, chosenMode, chosenBucket } = forest;
  for (let k = nodes.length - 1; k >= 0; k--) {
    const parent = at(nodes, k).parent;
    const packed = int(choice, k * buckets + (parent < 0 ? 0 : int(chosenBucket, parent)));
    chosenMode[k] = Math.floor(packed / buckets);
    chosenBucket[k] = packed % buckets;
  }
}

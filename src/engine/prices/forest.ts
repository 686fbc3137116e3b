import { at } from '../../at.ts';
import type { Minute } from '../../time/span.ts';
import { NEVER } from '../../time/time-map.ts';
import type { Labels } from '../labels.ts';
import type { Net, NetMode } from '../net.ts';
import type { Structure } from '../structure.ts';
import type { Term } from '../problem.ts';
import type { Slots } from '../slots.ts';
import { int } from '../../typed.ts';
import { termValue } from '../value.ts';
import { bucketLast, bucketOf, bucketStart, type Grid } from './grid.ts';
import type { Naming } from './naming.ts';
import type { Shape } from './shapes.ts';
import { type Branch, waitsOf } from './trees.ts';
import { ceilingOf, floorOf, type Wait } from '../waits.ts';

/** Bucket of a parent that cannot start any more. */
export const never = -1;

/** One mode of one activity, ready for pricing. */
export interface PricedMode {
  readonly shape: Shape;
  /** The mode, numbered through. */
  readonly mode: number;
  /** Its place among all priced modes. */
  readonly place: number;
  readonly cost: number;
  /** Its class among those that its children tell apart. */
  readonly class: number;
  readonly firstBucket: number;
  readonly lastBucket: number;
  /** May it as well start together with its parent, and does it? */
  readonly floats: boolean;
  readonly joined: boolean;
  /** By class of the parent: where that can start. */
  readonly parentStarts: readonly ParentStarts[];
  /** By bucket: least the activity's terms can cost; absent without terms. */
  readonly terms: Float64Array | undefined;
}

/** Where a parent can start, by bucket of its child's start. */
interface ParentStarts {
  /** At the earliest. */
  readonly first: Int32Array;
  /** At the latest; absent if any time later will do. */
  readonly last: Int32Array | undefined;
}

/** An activity in a tree. */
export interface PricedNode {
  readonly activity: number;
  /** Place of its parent in the tree, or -1. */
  readonly parent: number;
  readonly modes: readonly PricedMode[];
  /** How many classes its modes fall into. */
  readonly classes: number;
  /** First of its cells: one for each of its classes and each bucket. */
  readonly cell: number;
  /** First of its choices: one for each of its parent's classes and each bucket. */
  readonly firstChoice: number;
}

/** The activities of one component, children before parents. */
export interface Tree {
  readonly nodes: readonly PricedNode[];
  readonly cells: number;
}

/** All activities with their waits for at most one parent each, laid out on a grid. */
export interface Forest {
  readonly trees: readonly Tree[];
  readonly buckets: number;
  /** By place of a priced mode: first and last bucket in which it may start; to be narrowed and widened again. */
  readonly opens: Int32Array;
  readonly shuts: Int32Array;
  /** By activity: the choice that is settled, as in `choice`; -1 where none is. */
  readonly fixed: Int32Array;
  /** How many cells a round looks at. */
  readonly work: number;
  /** By cell: cost of all below it if it starts by then. */
  readonly below: Float64Array;
  /** By choice: best mode (by place in `modes`) and bucket of a start that lets the parent start then. */
  readonly choice: Int32Array;
  /** By node of a tree: what is chosen of it. */
  readonly chosenMode: Int32Array;
  readonly chosenBucket: Int32Array;
  /** By node of a tree: bucket of the last start that it waits for. */
  readonly latestBefore: Int32Array;
  /** By bucket: cost of the mode at hand. */
  readonly value: Float64Array;
  /** By class of its parent: the least cost of the node at hand. */
  readonly offers: readonly Offers[];
  /** For the mode at hand: buckets whose windows are open, the dearer the later. */
  readonly queue: Int32Array;
}

/** Least cost of a node by bucket of its parent's start, and the choice behind it. */
export interface Offers {
  /** What lets the parent start then or any time later. */
  readonly from: Float64Array;
  readonly fromChoice: Int32Array;
  /** What lets the parent start then. */
  readonly within: Float64Array;
  readonly withinChoice: Int32Array;
}

/** Lays out the forest of waits. */
export function forestOf(
  net: Net,
  labels: Labels,
  structure: Structure,
  terms: readonly (readonly Term[])[],
  branches: readonly Branch[],
  grid: Grid,
  byMode: readonly (Shape | undefined)[],
  naming: Naming,
): Forest {
  const startsOf = parentStartsBy(grid, naming);
  const everyBucket = Int32Array.from({ length: grid.count }, (_, b) => b);
  const together: ParentStarts = { first: everyBucket, last: everyBucket };
  const place = new Int32Array(net.count);
  let priced = 0;
  const trees = structure.components.map((members): Tree => {
    members.forEach((i, k) => (place[i] = k));
    let cells = 0;
    let choices = 0;
    const nodes = [...members].map((i): PricedNode => {
      const branch = at(branches, i);
      const modes = branch.classes.flatMap((own, c) =>
        own.map((mode) => {
          const waits = waitsOf(net, labels, branches, mode);
          const floats = branch.floats[c] === true;
          const lastBucket = floats ? grid.count - 1 : bucketOf(grid, labels.last(mode.index));
          return {
            shape: at(byMode, mode.index) ?? missingShape(mode),
            mode: mode.index,
            place: priced++,
            cost: mode.cost,
            class: c,
            firstBucket: bucketOf(grid, labels.first(mode.index)),
            lastBucket,
            floats,
            joined: branch.joined[c] === true,
            parentStarts: waits.map((wait, above) =>
              branch.joined[c] === true
                ? together
                : startsOf(mode.slots, wait, mayShut(branches, branch.parent, above)),
            ),
            terms: termsBy(net, labels, grid, mode, at(terms, i)),
          };
        }),
      );
      const node = {
        activity: i,
        parent: branch.parent < 0 ? -1 : int(place, branch.parent),
        modes,
        classes: branch.classes.length,
      };
      const made = { ...node, cell: cells, firstChoice: choices };
      cells += branch.classes.length * grid.count;
      choices += (branch.parent < 0 ? 1 : at(branches, branch.parent).classes.length) * grid.count;
      return made;
    });
    return { nodes, cells: Math.max(cells, choices) };
  });
  const most = trees.reduce((top, tree) => Math.max(top, tree.cells), 0);
  const mostClasses = branches.reduce((top, { classes }) => Math.max(top, classes.length), 1);
  const longest = trees.reduce((top, tree) => Math.max(top, tree.nodes.length), 0);
  const work = trees.reduce(
    (sum, { nodes }) =>
      sum +
      nodes.reduce(
        (inner, { modes }) =>
          modes.reduce(
            (all, m) => all + (m.lastBucket - m.firstBucket + 1) * Math.max(1, m.parentStarts.length),
            inner,
          ),
        nodes.length * grid.count,
      ),
    0,
  );
  const forest = {
    trees,
    buckets: grid.count,
    opens: new Int32Array(priced),
    shuts: new Int32Array(priced),
    fixed: new Int32Array(net.count).fill(never),
    work,
    below: new Float64Array(most),
    choice: new Int32Array(most),
    chosenMode: new Int32Array(longest),
    chosenBucket: new Int32Array(longest),
    latestBefore: new Int32Array(longest),
    value: new Float64Array(grid.count),
    offers: Array.from({ length: mostClasses }, () => ({
      from: new Float64Array(grid.count),
      fromChoice: new Int32Array(grid.count),
      within: new Float64Array(grid.count),
      withinChoice: new Int32Array(grid.count),
    })),
    queue: new Int32Array(grid.count),
  };
  for (const { nodes } of trees) for (const node of nodes) release(forest, node);
  return forest;
}

/** Lets an activity start again wherever its labels let it. */
function release({ opens, shuts }: Forest, node: PricedNode): void {
  for (const { place, firstBucket, lastBucket } of node.modes) {
    opens[place] = firstBucket;
    shuts[place] = lastBucket;
  }
}

function missingShape(mode: NetMode): never {
  throw new Error(`mode ${mode.index} has no shape`);
}

/** Do windows that lead to class `c` of `parent` say when that starts? Not where it starts before what they lead to. */
function mayShut(branches: readonly Branch[], parent: number, c: number): boolean {
  const { floats, joined } = at(branches, parent);
  return floats[c] !== true || joined[c] === true;
}

/** Lays out once for equal slots and waits where the parent can start. */
function parentStartsBy(grid: Grid, naming: Naming): (slots: Slots, wait: Wait, shuts: boolean) => ParentStarts {
  const known = new Map<string, ParentStarts>();
  return (slots, wait, shuts) => {
    const name = `${naming.number(slots)}:${naming.wait(wait)}:${shuts ? 1 : 0}`;
    const found = known.get(name);
    if (found !== undefined) return found;
    const first = new Int32Array(grid.count).fill(never);
    const latest = new Int32Array(grid.count).fill(grid.count - 1);
    for (let b = 0; b < grid.count; b++) {
      const start = slots.fit(bucketStart(grid, b));
      if (start === NEVER || start > bucketLast(grid, b)) continue;
      const starts = { first: start, last: slots.fitBack(bucketLast(grid, b)) };
      const ends = { first: slots.end(start), last: slots.end(starts.last) };
      const floor = floorOf(wait, starts, ends);
      if (floor === NEVER) continue;
      first[b] = bucketOf(grid, floor);
      if (shuts) latest[b] = bucketOf(grid, ceilingOf(wait, starts, ends));
    }
    const made = latest.every((b) => b === grid.count - 1) ? { first, last: undefined } : growing(first, latest);
    known.set(name, made);
    return made;
  };
}

/**
 * Widens where a parent can start until both ends grow with its child's start. Else they need not: where a coat misses its window,
 * what follows comes later than after one that is laid later and does not.
 */
function growing(first: Int32Array, last: Int32Array): { readonly first: Int32Array; readonly last: Int32Array } {
  let latest = 0;
  for (let b = 0; b < first.length; b++) {
    if (int(first, b) === never) continue;
    latest = Math.max(latest, int(last, b));
    last[b] = latest;
  }
  let soonest = first.length;
  for (let b = first.length - 1; b >= 0; b--) {
    if (int(first, b) === never) continue;
    soonest = Math.min(soonest, int(first, b));
    first[b] = soonest;
  }
  return { first, last };
}

/** By bucket: the least that `terms` can cost for a start in it; absent without terms. */
function termsBy(
  net: Net,
  labels: Labels,
  grid: Grid,
  { slots, index }: NetMode,
  terms: readonly Term[],
): Float64Array | undefined {
  if (terms.length === 0) return undefined;
  const costs = new Float64Array(grid.count).fill(Infinity);
  for (let b = bucketOf(grid, labels.first(index)); b <= bucketOf(grid, labels.last(index)); b++) {
    const start = slots.fit(Math.max(labels.first(index), bucketStart(grid, b)));
    const last = slots.fitBack(Math.min(labels.last(index), bucketLast(grid, b)));
    if (start > last) continue;
    costs[b] = terms.reduce((sum, term) => sum + leastWithin(term, net.problem.from, slots, start, last), 0);
  }
  return costs;
}

/** Least of `term` for starts from `start` to `last`. */
function leastWithin(term: Term, from: Minute, slots: Slots, start: Minute, last: Minute): number {
  const [low, high] = term.kind === 'moved' ? [start, last] : [slots.end(start), slots.end(last)];
  const corner = term.kind === 'moved' ? term.at : term.kind === 'late' ? term.due : low;
  const inner = Math.min(Math.max(corner, low), high);
  return Math.min(...[low, inner, high].map((t) => termValue(term, from, t, t)));
}

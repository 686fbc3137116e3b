import { at } from '../at.ts';
import type { Schedule } from './problem.ts';
import { clearWishes, freeMembers, insertAll, keyByLatest, removeAll, type Search } from './search.ts';
import type { Structure } from './structure.ts';
import { int, real } from '../typed.ts';

/** How often components that found no place may be brought forward, and how often one is tried in other orders. */
const rounds = 30;
const triesEach = 12;

/**
 * Places everything, component by component in the given order, the one that found no place first the next time.
 * Answers -1 when done, else an activity that found no place however often it was tried.
 */
export function construct(search: Search, order: readonly number[]): number {
  const queue = [...order];
  for (let round = 0; ; round++) {
    const stuck = placeQueue(search, queue);
    if (stuck < 0) return -1;
    if (round === rounds || queue[0] === int(search.structure.componentOf, stuck)) return stuck;
    const component = int(search.structure.componentOf, stuck);
    queue.splice(queue.indexOf(component), 1);
    queue.unshift(component);
  }
}

function placeQueue(search: Search, queue: readonly number[]): number {
  emptyPlan(search);
  return placeFirst(search, queue) ? -1 : search.inserter.failed;
}

/** Tries several orders, the plain one first. */
function placeComponent(search: Search, members: readonly number[]): boolean {
  for (let k = 0; k < triesEach; k++) {
    keyByLatest(search, members, k * 240);
    if (insertAll(search, members, Infinity, k % 3 !== 2)) return true;
    removeAll(search, members);
  }
  return false;
}

/** Takes everything out. */
export function emptyPlan(search: Search): void {
  removeAll(search, allOf(search));
}

function allOf(search: Search): number[] {
  return Array.from({ length: search.net.count }, (_, i) => i);
}

/**
 * Orders of components to begin with, the first of which serves best alone: by weight for work; by due date; by what is
 * left between the earliest end and the due date; and those first whose steps are tied to one another in large blocks,
 * since they find no place any more once others lie there.
 */
export function componentOrders(search: Search): number[][] {
  const { structure, labels } = search;
  const { components, componentOf } = structure;
  const due = new Float64Array(components.length).fill(Infinity);
  const slack = new Float64Array(components.length).fill(Infinity);
  for (const term of search.net.problem.objective) {
    if (term.kind !== 'late') continue;
    const component = int(componentOf, term.activity);
    due[component] = Math.min(real(due, component), term.due);
    slack[component] = Math.min(real(slack, component), term.due - labels.earliestEnd(term.activity));
  }
  const density = components.map((members, c) => {
    const work = members.reduce((sum, i) => sum + shortestOf(search, i), 1);
    return real(search.weights, c) / work;
  });
  const tied = largestBlocks(structure).map((size) => Math.floor(Math.log2(size)));
  const tight = components.map((members) => (members.some((i) => search.pinned[i] === 1) ? 0 : 1));
  const orderBy = (...keys: readonly ArrayLike<number>[]): number[] =>
    components
      .map((_, c) => c)
      .sort((a, b) => keys.reduce((found, key) => found || compare(at(key, a), at(key, b)), 0) || a - b);
  const bulk = tied.map((size) => -size);
  const lightness = density.map((share) => -share);
  return [
    orderBy(tight, lightness, due),
    orderBy(tight, due, lightness),
    orderBy(tight, slack, lightness),
    orderBy(tight, bulk, due, lightness),
  ];
}

/** By component: the size of the largest block in it. */
function largestBlocks({ components, blockOf }: Structure): number[] {
  const size = new Map<number, number>();
  for (const block of blockOf) size.set(block, (size.get(block) ?? 0) + 1);
  return components.map((members) => members.reduce((most, i) => Math.max(most, size.get(int(blockOf, i)) ?? 1), 1));
}

function compare(a: number, b: number): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function shortestOf(search: Search, i: number): number {
  let shortest = Infinity;
  for (let m = int(search.net.modeFirst, i); m < int(search.net.modeFirst, i + 1); m++)
    shortest = Math.min(shortest, at(search.net.modes, m).slots.duration);
  return shortest;
}

/**
 * Places everything as near as it can to `from`, in the order of its starts, but `components` anew before all else; false
 * if that fails.
 */
export function constructFrom(search: Search, from: Schedule, components: readonly number[] = []): boolean {
  emptyPlan(search);
  const everything = allOf(search);
  wishFor(search, everything, from);
  const done =
    (components.length === 0 || placeFirst(search, components)) &&
    insertAll(
      search,
      everything.filter((i) => !search.plan.isPlaced(i)),
      Infinity,
      false,
    );
  clearWishes(search, everything);
  return done;
}

/** Places what is pinned, and then `components`, one after another, without their wishes. */
export function placeFirst(search: Search, components: readonly number[]): boolean {
  const pinned = allOf(search).filter((i) => search.pinned[i] === 1);
  keyByLatest(search, pinned, 0);
  if (!insertAll(search, pinned, Infinity, false)) return false;
  return components.every((c) => {
    const members = freeMembers(search, c);
    clearWishes(search, members);
    return placeComponent(search, members);
  });
}

/** Places everything, those with the smallest `key` first; false if that fails. */
export function constructBy(search: Search, key: Float64Array): boolean {
  emptyPlan(search);
  for (let i = 0; i < key.length; i++) search.key[i] = search.pinned[i] === 1 ? -Infinity : real(key, i);
  return insertAll(search, allOf(search), Infinity, false);
}

/**
 * Sets keys, modes and wishes of `list` to what `from` says. What it says of an activity that is no longer so (a mode or
 * an activity that is gone) is left out.
 */
export function wishFor(search: Search, list: readonly number[], from: Schedule): void {
  const { net, inserter } = search;
  for (const i of list) {
    const start = from.starts[i];
    const mode = int(net.modeFirst, i) + (from.modes[i] ?? net.modes.length);
    search.key[i] = search.pinned[i] === 1 ? -Infinity : (start ?? Infinity);
    if (start === undefined || mode >= int(net.modeFirst, i + 1)) continue;
    inserter.preferred[i] = mode;
    inserter.wished[i] = start;
  }
}

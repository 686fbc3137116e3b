import { at } from '../at.ts';
import { ALWAYS } from '../time/time-map.ts';
import type { Costs } from './costs.ts';
import { costsOf } from './costs.ts';
import { Inserter } from './insert.ts';
import type { Labels } from './labels.ts';
import type { Net } from './net.ts';
import { placingOrder } from './order.ts';
import { Plan } from './plan.ts';
import { type Random, randomFrom } from './random.ts';
import { type Structure, structureOf } from './structure.ts';
import { int, real } from '../typed.ts';

/** Everything a search works on. */
export interface Search {
  readonly net: Net;
  readonly labels: Labels;
  readonly costs: Costs;
  readonly structure: Structure;
  readonly plan: Plan;
  readonly inserter: Inserter;
  readonly random: Random;
  /** By activity: order of placing, smallest first; rewritten at will. */
  readonly key: Float64Array;
  /** Activities whose place and mode the labels leave no choice about. */
  readonly pinned: Uint8Array;
  /** By component: the weight of one minute's delay. */
  readonly weights: Float64Array;
}

/** Sets up a search; `labels` must be propagated. */
export function searchOf(net: Net, labels: Labels, seed: number): Search {
  const costs = costsOf(net, labels);
  const structure = structureOf(net, labels);
  const weights = new Float64Array(structure.components.length);
  for (const term of net.problem.objective) {
    const component = int(structure.componentOf, term.activity);
    if (term.kind !== 'moved') weights[component] = real(weights, component) + term.weight;
  }
  const minuteWeight = Float64Array.from({ length: net.count }, (_, i) => real(weights, int(structure.componentOf, i)));
  const earliest = Int32Array.from({ length: net.count }, (_, i) => labels.earliestStart(i));
  const plan = new Plan(net, earliest, costs, pullsOf(net, structure, weights));
  const pinned = Uint8Array.from({ length: net.count }, (_, i) => (isPinned(net, labels, i) ? 1 : 0));
  return {
    net,
    labels,
    costs,
    structure,
    plan,
    inserter: new Inserter(plan, labels, minuteWeight),
    random: randomFrom(seed),
    key: new Float64Array(net.count),
    pinned,
    weights,
  };
}

/** Share of a component's weight that is spread over its activities to guide the search, the later the more. */
const pullShare = 0.3;

function pullsOf(net: Net, structure: Structure, weights: Float64Array): Float64Array {
  const stays = new Set(net.problem.objective.flatMap((t) => (t.kind === 'moved' ? [t.activity] : [])));
  return Float64Array.from({ length: net.count }, (_, i) => {
    if (stays.has(i)) return 0;
    const c = int(structure.componentOf, i);
    const size = at(structure.components, c).length;
    return (pullShare * real(weights, c) * (int(structure.rank, i) + 1)) / ((size * (size + 1)) / 2);
  });
}

function isPinned(net: Net, labels: Labels, i: number): boolean {
  let open = 0;
  for (let m = int(net.modeFirst, i); m < int(net.modeFirst, i + 1); m++) if (labels.isOpen(m)) open += 1;
  return open === 1 && labels.earliestStart(i) === labels.latestStart(i);
}

/** Places `list`, all of it not placed, by `search.key`; false (with part of it placed) if that fails. */
export function insertAll(search: Search, list: readonly number[], limit: number, wholeBlocks: boolean): boolean {
  return search.inserter.insert(placingOrder(search.structure, list, search.key, wholeBlocks), limit);
}

/** Takes out those of `list` that are placed. */
export function removeAll(search: Search, list: readonly number[]): void {
  for (const i of list) if (search.plan.isPlaced(i)) search.plan.remove(i);
}

/** Where `list`, all of it placed, is now; called, it puts all of it back there. */
export function placesOf({ plan }: Search, list: readonly number[]): () => void {
  const places = list.map((i) => [i, int(plan.modes, i), int(plan.starts, i)] as const);
  return () => {
    for (const i of list) if (plan.isPlaced(i)) plan.remove(i);
    for (const [i, mode, start] of places) plan.place(i, mode, start);
  };
}

/** Sets the keys of `list` to latest starts, blurred by up to `noise` minutes either way. */
export function keyByLatest(search: Search, list: readonly number[], noise: number): void {
  for (const i of list)
    search.key[i] = search.labels.latestStart(i) + (noise > 0 ? (search.random.unit() - 0.5) * 2 * noise : 0);
}

/** Forgets wishes and preferences for `list`. */
export function clearWishes(search: Search, list: readonly number[]): void {
  for (const i of list) {
    search.inserter.preferred[i] = -1;
    search.inserter.wished[i] = ALWAYS;
  }
}

/** Members of component `c` that are not pinned. */
export function freeMembers(search: Search, c: number): number[] {
  return [...at(search.structure.components, c)].filter((i) => search.pinned[i] === 0);
}

/** Where a `moved` term wants activity `i` to start, if one does. */
export function homeOf({ costs }: Search, i: number): number | undefined {
  for (const term of at(costs.terms, i)) if (term.kind === 'moved') return term.at;
  return undefined;
}

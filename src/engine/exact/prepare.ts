import type { Conflict } from '../problem.ts';
import { int } from '../../typed.ts';
import { addArc, longestPaths, positiveCycle } from './distances.ts';
import { NO_GUARD } from './links.ts';
import type { Link } from './links.ts';
import type { Arcs, Model } from './model.ts';

/** Two activities that cannot overlap, in either order. */
export interface Pair {
  readonly first: number;
  readonly second: number;
}

/** A model with what follows from lags and capacities before any search. */
export interface Prepared {
  readonly model: Model;
  /** Longest paths, `n × n`. */
  readonly far: Int32Array;
  /** Lags, and the orders they leave no choice about. */
  readonly links: readonly Link[];
  readonly pairs: readonly Pair[];
}

/** Draws the conclusions, or finds that there is no schedule and says why. */
export function prepare(model: Model): Prepared | Conflict {
  for (const [activity, needs] of model.needs.entries())
    for (const { resource, units } of needs)
      if (units > int(model.capacity, resource)) return { activities: [activity], lags: [], resources: [resource] };
  const { arcs } = model;
  const cycle = positiveCycle(model.activities, arcs);
  if (cycle !== undefined)
    return {
      activities: cycle.map((k) => int(arcs.from, k)),
      lags: [...new Set(cycle.map((k) => int(arcs.lag, k)))],
      resources: [],
    };
  const far = longestPaths(model.activities, arcs);
  const links = linksOf(arcs);
  const ordered = orderPairs(model, far, links);
  return 'activities' in ordered ? ordered : { model, far, links, pairs: ordered };
}

function linksOf(arcs: Arcs): Link[] {
  return Array.from(arcs.from, (from, k) => ({
    from,
    to: int(arcs.to, k),
    weight: int(arcs.weight, k),
    guard: NO_GUARD,
  })).filter((link) => link.from !== link.to);
}

/** Settles the order of pairs where one order would close a positive cycle; adds it to `far` and `links`. */
function orderPairs(model: Model, far: Int32Array, links: Link[]): Pair[] | Conflict {
  const { activities: n, duration } = model;
  const fits = (a: number, b: number) => int(far, b * n + a) + int(duration, a) <= 0;
  const isBefore = (a: number, b: number) => int(far, a * n + b) >= int(duration, a);
  let pairs = disjointPairs(model);
  for (;;) {
    const open = pairs.filter(({ first, second }) => !isBefore(first, second) && !isBefore(second, first));
    let settled = 0;
    for (const { first, second } of open) {
      const forward = fits(first, second);
      const backward = fits(second, first);
      if (forward && backward) continue;
      if (!forward && !backward)
        return { activities: [first, second], lags: [], resources: sharedBy(model, first, second) };
      const [from, to] = forward ? [first, second] : [second, first];
      if (isBefore(from, to)) continue;
      settled += 1;
      links.push({ from, to, weight: int(duration, from), guard: NO_GUARD });
      addArc(far, n, from, to, int(duration, from));
    }
    pairs = open;
    if (settled === 0) return pairs;
  }
}

function disjointPairs(model: Model): Pair[] {
  const pairs: Pair[] = [];
  const unitsOf = model.needs.map((needs) => new Map(needs.map((need) => [need.resource, need.units])));
  for (let first = 0; first < model.activities; first++)
    for (let second = first + 1; second < model.activities; second++) {
      const others = unitsOf[second];
      const exceeds = model.needs[first]?.some(
        ({ resource, units }) => units + (others?.get(resource) ?? 0) > int(model.capacity, resource),
      );
      if (exceeds === true) pairs.push({ first, second });
    }
  return pairs;
}

function sharedBy(model: Model, a: number, b: number): number[] {
  const others = new Map(model.needs[b]?.map((need) => [need.resource, need.units]));
  return (model.needs[a] ?? [])
    .filter(({ resource, units }) => units + (others.get(resource) ?? 0) > int(model.capacity, resource))
    .map((need) => need.resource);
}

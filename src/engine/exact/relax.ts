import { int } from '../../typed.ts';
import { buildOf } from './build.ts';
import type { Build } from './build.ts';
import { NO_GUARD } from './links.ts';
import type { Link } from './links.ts';
import type { Model } from './model.ts';
import type { Pair, Prepared } from './prepare.ts';
import { narrowWindows } from './windows.ts';

/**
 * The problem that is left when only the activities in `free` may change places with others: the rest keep the order
 * they have in `starts` wherever one hands a resource on to the next, but may all slide. At most `target` may be the
 * start of the activity that is the objective. Undefined if plainly nothing fits.
 */
export function relaxAround(
  prepared: Prepared,
  starts: Int32Array,
  free: Uint8Array,
  limit: { readonly activity: number; readonly latest: number } | undefined,
): Build | undefined {
  const { model } = prepared;
  const order = [...starts.keys()].sort((a, b) => int(starts, a) - int(starts, b) || a - b);
  const links = [...prepared.links, ...handOvers(model, starts, order, free)];
  const place = new Int32Array(order.length);
  order.forEach((activity, k) => (place[activity] = k));
  links.sort((a, b) => int(place, a.from) - int(place, b.from));
  const lowest = model.earliest.slice();
  const highest = model.latest.slice();
  if (limit !== undefined) highest[limit.activity] = Math.min(limit.latest, int(highest, limit.activity));
  if (!narrowWindows(lowest, highest, links)) return undefined;
  const pairs: Pair[] = [];
  for (const pair of prepared.pairs) {
    const { first, second } = pair;
    if (free[first] === 0 && free[second] === 0) continue;
    const forward = int(lowest, first) + int(model.duration, first) <= int(highest, second);
    const backward = int(lowest, second) + int(model.duration, second) <= int(highest, first);
    if (!forward && !backward) return undefined;
    if (forward && backward) pairs.push(pair);
    else if (forward) links.push({ from: first, to: second, weight: int(model.duration, first), guard: NO_GUARD });
    else links.push({ from: second, to: first, weight: int(model.duration, second), guard: NO_GUARD });
  }
  return buildOf({ ...model, earliest: lowest, latest: highest }, links, pairs);
}

/** Arcs along which each unit of each resource passes from one kept activity to the next, in the order of starts. */
function handOvers(model: Model, starts: Int32Array, order: readonly number[], free: Uint8Array): Link[] {
  const links: Link[] = [];
  const holder = Array.from(model.capacity, (units) => new Int32Array(units).fill(-1));
  for (const activity of order) {
    if (free[activity] !== 0) continue;
    const start = int(starts, activity);
    for (const { resource, units } of model.needs[activity] ?? []) {
      const holders = holder[resource] ?? new Int32Array(0);
      takeOver(links, holders, model.duration, starts, activity, start, units);
    }
  }
  return links;
}

/** `activity` takes `units` of a resource over, from few former holders and from those that ended last. */
function takeOver(
  links: Link[],
  holders: Int32Array,
  duration: Int32Array,
  starts: Int32Array,
  activity: number,
  start: number,
  units: number,
): void {
  const endOf = (holder: number) =>
    holder < 0 ? Number.NEGATIVE_INFINITY : int(starts, holder) + int(duration, holder);
  let left = units;
  while (left > 0) {
    let from = -2;
    for (const holder of holders)
      if (holder !== activity && endOf(holder) <= start && (from === -2 || endOf(holder) > endOf(from))) from = holder;
    if (from === -2) return;
    for (let unit = 0; unit < holders.length && left > 0; unit++)
      if (int(holders, unit) === from) {
        holders[unit] = activity;
        left -= 1;
      }
    if (from >= 0) links.push({ from, to: activity, weight: int(duration, from), guard: NO_GUARD });
  }
}

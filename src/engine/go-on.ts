import { canSettleDays, settleDays, type Told } from './arrange.ts';
import { improve, type Incumbent, longStretch } from './improve.ts';
import type { SearchOptions } from './problem.ts';
import { cheapestFirst, type Order } from './reorder.ts';
import { placementsWithin, reorderAll } from './reorder-all.ts';
import type { Search } from './search.ts';

/** Most times as long as the first a stretch is. */
const longest = 8;
/** How many of the best orders known each stretch of changing orders begins with, beside those given. */
const carried = 6;

/** A way to a better plan, which is followed for a stretch at a time. */
interface Way {
  /** Follows it for so many times as long as the first stretch. */
  readonly follow: (times: number) => void;
  times: number;
  steps: number;
  /** By how much each step of the last stretch has made the plan cheaper. */
  gain: number;
}

function wayOf(follow: Way['follow']): Way {
  return { follow, times: 1, steps: 0, gain: Infinity };
}

/**
 * Searches on until it is stopped, in three ways: days are settled one after another, where prices are fine; whole orders are
 * changed, those told and the best of what they have led to; and the plan is improved part by part, without cooling, since nobody
 * knows when it ends. The way that gained more in its last stretch is followed next, each time for twice as long.
 */
export function goOn(search: Search, options: SearchOptions, incumbent: Incumbent, told: Told): void {
  const { inserter, net } = search;
  const { orders } = told;
  let best: readonly Order[] = [orderOf(incumbent)];
  const byOrders = wayOf((times) => {
    const found = reorderAll(search, options, incumbent, cheapestFirst([...best, ...orders]), times);
    best = cheapestFirst([...found, ...best]).slice(0, carried);
  });
  const byParts = wayOf((times) => {
    improve(search, options, incumbent, inserter.steps + times * longStretch(options.steps), false);
  });
  const ways = [byParts, byOrders];
  if (canSettleDays(search, told))
    ways.unshift(
      wayOf((times) => {
        settleDays(search, options, incumbent, told, times * placementsWithin(options.steps, net.count));
      }),
    );
  while (options.stop?.() !== true && incumbent.value > incumbent.bound) {
    const next = ways.reduce((best, way) => (isBetter(way, best) ? way : best));
    const [steps, value] = [inserter.steps, incumbent.value];
    next.follow(next.times);
    const taken = Math.max(1, inserter.steps - steps);
    next.steps += taken;
    next.gain = (value - incumbent.value) / taken;
    next.times = Math.min(2 * next.times, longest);
  }
}

/** Ways that gained alike take turns. */
function isBetter(one: Way, than: Way): boolean {
  return one.gain === than.gain ? one.steps < than.steps : one.gain > than.gain;
}

/** The order in which the plan has it. */
function orderOf({ starts, value }: Incumbent): Order {
  return { key: Float64Array.from(starts), value };
}

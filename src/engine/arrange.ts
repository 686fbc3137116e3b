import { dayByDay, placementsOfOne } from './day-by-day.ts';
import type { Incumbent } from './improve.ts';
import type { Market } from './prices/market.ts';
import { outlookOf } from './prices/outlook.ts';
import type { SearchOptions } from './problem.ts';
import type { Order } from './reorder.ts';
import { placementsWithin, reorderAll } from './reorder-all.ts';
import type { Search } from './search.ts';

/** What prices have told about a whole plan: orders that lead to one, the best first, and the prices where they are fine. */
export interface Told {
  readonly orders: readonly Order[];
  readonly market: Market | undefined;
}

/** Settling days begins only where its placements last for so many plans. */
const leastPlans = 4;
/** Where activities are fewer, pricing a morning takes longer than trying its orders. */
const leastActivities = 200;
/** How many times as many placements are made where days are settled as where orders are changed. */
const share = 1.1;
/** Orders that settling days begins with. */
const firstOrders = 8;

/** Arranges the whole plan otherwise, within the budget: day by day where prices are fine and it allows a few plans, else by changed orders. */
export function arrange(search: Search, options: SearchOptions, incumbent: Incumbent, told: Told): void {
  const budget = placementsWithin(options.steps, search.net.count);
  if (!settleDays(search, options, incumbent, told, share * budget))
    reorderAll(search, options, incumbent, told.orders);
}

/** Settles days for so many `placements`; false where prices are not fine, or too few plans could be made. */
export function settleDays(
  search: Search,
  options: SearchOptions,
  incumbent: Incumbent,
  { orders, market }: Told,
  placements: number,
): boolean {
  const { net, labels, structure, inserter } = search;
  if (market === undefined || orders.length === 0 || net.count < leastActivities) return false;
  if (placements < leastPlans * placementsOfOne(search, incumbent)) return false;
  const outlook = outlookOf(net, labels, structure, market);
  const own = Float64Array.from(incumbent.starts);
  const first = [own, ...orders.slice(0, firstOrders).map(({ key }) => key)];
  dayByDay(search, options, incumbent, outlook, first, inserter.steps + placements);
  return true;
}

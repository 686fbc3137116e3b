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
const share = 0.95;
/** Orders that settling days begins with. */
const firstOrders = 8;

/**
 * Arranges the whole plan otherwise, within the budget: day by day where days can be settled and it allows some plans, else by
 * changed orders.
 */
export function arrange(search: Search, options: SearchOptions, incumbent: Incumbent, told: Told): void {
  const placements = placementsWithin(options.steps, search.net.count);
  const allowsPlans = share * placements >= leastPlans * placementsOfOne(search, incumbent);
  if (allowsPlans && canSettleDays(search, told)) settleDays(search, options, incumbent, told, placements);
  else reorderAll(search, options, incumbent, told.orders);
}

/** With prices on a fine grid. */
interface ToldFinely extends Told {
  readonly market: Market;
}

/** Are prices fine, and activities enough? */
export function canSettleDays({ net }: Search, told: Told): told is ToldFinely {
  return told.market !== undefined && told.orders.length > 0 && net.count >= leastActivities;
}

/** Settles days for as long as so many `placements` in changed orders would take, or a little longer. */
export function settleDays(
  search: Search,
  options: SearchOptions,
  incumbent: Incumbent,
  { orders, market }: ToldFinely,
  placements: number,
): void {
  const { net, labels, structure, inserter } = search;
  const outlook = outlookOf(net, labels, structure, market);
  const own = Float64Array.from(incumbent.starts);
  const first = [own, ...orders.slice(0, firstOrders).map(({ key }) => key)];
  dayByDay(search, options, incumbent, outlook, first, inserter.steps + share * placements);
}

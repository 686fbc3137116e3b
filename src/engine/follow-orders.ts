import { constructBy } from './construct.ts';
import { type Incumbent, keep } from './improve.ts';
import type { SearchOptions } from './problem.ts';
import { cheapestFirst, type Order } from './reorder.ts';
import type { Search } from './search.ts';

/** How often as many orders are placed by as there are: once as they are, else blurred. */
const blurs = 3;

/**
 * Places everything anew by each of `orders`, and then by the best of them, blurred anew each time; keeps what is cheaper.
 * Answers the orders that led to plans, the best first.
 */
export function followOrders(
  search: Search,
  options: SearchOptions,
  incumbent: Incumbent,
  orders: readonly Float64Array[],
): readonly Order[] {
  const followed: Order[] = [];
  for (let k = 0; k < blurs * orders.length; k++) {
    if (incumbent.value <= incumbent.bound || options.stop?.() === true) break;
    const key = orders[k] ?? blurred(search, cheapestFirst(followed)[0]?.key);
    if (key === undefined) break;
    if (!placedBy(search, key)) continue;
    keep(search, options, incumbent);
    followed.push({ key, value: search.plan.value });
  }
  return cheapestFirst(followed);
}

/** Places everything by `order`; looks ahead no more once that has failed. */
function placedBy(search: Search, order: Float64Array): boolean {
  if (constructBy(search, order)) return true;
  if (!search.inserter.looksAhead) return false;
  search.inserter.looksAhead = false;
  return constructBy(search, order);
}

function blurred(search: Search, order: Float64Array | undefined): Float64Array | undefined {
  const noise = 60 + search.random.below(8) * 60;
  return order?.map((key) => key + noise * (search.random.unit() - 0.5));
}

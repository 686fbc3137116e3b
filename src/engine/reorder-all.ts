import type { Incumbent } from './improve.ts';
import type { SearchOptions } from './problem.ts';
import { cheapestFirst, type Order, reorder } from './reorder.ts';
import type { Search } from './search.ts';

/** Placements in changed orders: for each step of the budget, and at most. */
const perStep = 70;
const most = 300_000;
/**
 * The same where activities are many: for each step and pair of them, and at most, times activities. So some tens of pieces get
 * the most tries: their plans are harder to arrange than those of a few, and their orders are still tried fast.
 */
const perStepAndPair = 0.00114;
const mostTimesActivities = 800_000_000;

/**
 * The rounds: from how many orders at most changing begins, and with how many it goes on, and which share of the placements each
 * round gets, all of its orders alike. Where an order leads shows after some tens of tries.
 */
const rounds = [
  { most: 16, share: 0.36 },
  { most: 6, share: 0.27 },
  { most: 2, share: 0.37 },
];
/** At least so often each is changed, or fewer are. */
const leastTries = 20;

/** How many placements in changed orders a budget of so many steps allows for so many activities: never fewer than steps. */
export function placementsWithin(steps: number, activities: number): number {
  const wanted = steps * Math.max(perStep, perStepAndPair * activities ** 2);
  return Math.max(steps, Math.min(wanted, Math.max(most, mostTimesActivities / activities)));
}

/**
 * Changes the best of `orders`, given the best first, in rounds: with what has got best in one, the next goes on. Takes so many
 * `times` the budget's placements. Answers the best of the last round, the best first.
 */
export function reorderAll(
  search: Search,
  options: SearchOptions,
  incumbent: Incumbent,
  orders: readonly Order[],
  times = 1,
): readonly Order[] {
  const { inserter, net } = search;
  const budget = times * placementsWithin(options.steps, net.count);
  let begin = inserter.steps;
  let left = orders;
  for (const round of rounds) {
    const placements = round.share * budget;
    const count = Math.max(1, Math.min(round.most, left.length, Math.floor(placements / net.count / leastTries)));
    const tried: Order[] = [];
    for (const { key } of left.slice(0, count)) {
      if (options.stop?.() === true) return left;
      const until = begin + (placements * (tried.length + 1)) / count;
      const found = reorder(search, options, incumbent, key, until);
      if (found !== undefined) tried.push(found);
    }
    begin += placements;
    left = cheapestFirst(tried);
  }
  return left;
}

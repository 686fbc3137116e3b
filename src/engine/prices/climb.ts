import { at } from '../../at.ts';
import { int, real } from '../../typed.ts';
import type { Forest } from './forest.ts';
import { priceForest } from './price-forest.ts';
import { type Market, sumUp, want } from './market.ts';
import { priceShape, type Shape } from './shapes.ts';

/** Length of the first steps: a share of what would do if the excess stayed as it is. */
const firstStep = 0.05;
/** Rounds without a better bound after which the steps get shorter, and by which share; and how they grow while all is well. */
const patience = 3;
const shorter = 0.66;
const longer = 1.1;
/** Most and least share that the last round has in the mean. */
const mostOfLast = 0.5;
const leastOfLast = 0.05;
/** Steps smaller than this gain nothing more. */
const smallestStep = 1e-4;
/** Share of the rounds after which what is kept past the end is charged for, if not before, and the least step to begin that with. */
const beforeHolds = 0.6;
const leastWithHolds = 0.005;

/** A forest and the market that its parts buy in. */
export interface Layout {
  readonly shapes: readonly Shape[];
  readonly forest: Forest;
  readonly market: Market;
  /** Value of a schedule known, to steer the steps by. */
  readonly target: number;
  /** Told after every round of the start of each activity in its cheapest part. */
  readonly seen: (starts: Float64Array) => void;
  readonly starts: Float64Array;
  /** All that is in buckets before this one is settled, and nothing there has a price; 0 if absent. */
  readonly from?: number;
  readonly stop: (() => boolean) | undefined;
}

/** The bound at the market's prices; leaves in the market what is wanted at them. */
export function boundAt({ market, shapes, forest, starts, from }: Layout, holds: boolean): number {
  const worth = sumUp(market, from);
  for (const shape of shapes) priceShape(shape, market.grid, market.sums, holds, from);
  for (const demand of market.demand) demand.fill(0);
  const cheapest = priceForest(
    forest,
    (i, shape, bucket) => {
      want(market, shape, bucket, holds);
      starts[i] = int(shape.knots.starts, int(shape.knot, bucket));
    },
    from,
  );
  return cheapest - worth;
}

/**
 * Steps towards better prices, from those of the market; leaves it at the best found, and answers their bound, at least
 * `best`, which is theirs to begin with. Each step goes from the best prices along a mean of what has been wanted too much, with
 * weights that make that mean small: the volume algorithm (Barahona, Anbil, Mathematical Programming 87, 2000; from memory).
 */
export function climb(lay: Layout, best: number, rounds: number): number {
  const { market, target } = lay;
  const kept = market.prices.map((prices) => prices.slice());
  const goBack = (): void => {
    market.prices.forEach((prices, r) => {
      prices.set(at(kept, r));
    });
  };
  const mean = market.prices.map((prices) => new Float64Array(prices.length));
  const excess = market.prices.map((prices) => new Float64Array(prices.length));
  boundAt(lay, false);
  excessOf(market, mean);
  let step = firstStep;
  let idle = 0;
  let holds = false;
  for (let round = 0; round < rounds && best < target && (!holds || step > smallestStep); round++) {
    if (lay.stop?.() === true) break;
    if (!holds && (round >= beforeHolds * rounds || step <= smallestStep)) {
      // Charging for what is kept past the end can only raise the bound, but finding prices for it from nothing is slow.
      holds = true;
      step = Math.max(step, leastWithHolds);
      goBack();
      best = Math.max(best, boundAt(lay, true));
    }
    const steepness = rise(market, kept, mean, (target - best) * step);
    const bound = boundAt(lay, holds);
    lay.seen(lay.starts);
    excessOf(market, excess);
    if (bound > best) {
      best = bound;
      idle = 0;
      if (alike(market, kept, excess, mean) >= 0) step *= longer;
      market.prices.forEach((prices, r) => at(kept, r).set(prices));
    } else if (++idle === patience) {
      step *= shorter;
      idle = 0;
    }
    if (steepness === 0) break;
    mixIn(market, mean, excess);
  }
  goBack();
  return best;
}

/** Fills in how much more is wanted than there is, by resource and bucket. */
function excessOf({ grid, demand, minutes, capacity }: Market, excess: readonly Float64Array[]): void {
  excess.forEach((own, r) => {
    const [asked, open] = [at(demand, r), at(minutes, r)];
    for (let b = 0; b < grid.count; b++) own[b] = real(asked, b) - int(capacity, r) * real(open, b);
  });
}

/**
 * Sets the market's prices to `from`, raised where `excess` says that more is wanted than there is and lowered where less, by a
 * step for a gain of `wanted`. Answers 0 if there is nothing to raise or to lower.
 */
function rise(market: Market, from: readonly Float64Array[], excess: readonly Float64Array[], wanted: number): number {
  const { grid, minutes, prices } = market;
  const square = alike(market, from, excess, excess);
  const length = square === 0 ? 0 : wanted / square;
  prices.forEach((own, r) => {
    const [base, along, open] = [at(from, r), at(excess, r), at(minutes, r)];
    for (let b = 0; b < grid.count; b++)
      own[b] = Math.max(0, real(base, b) + (length * real(along, b)) / Math.max(1, real(open, b)));
  });
  return square;
}

/** Product of two excesses where prices can follow: not where they are 0 and would fall. */
function alike(
  { grid, minutes }: Market,
  prices: readonly Float64Array[],
  one: readonly Float64Array[],
  other: readonly Float64Array[],
): number {
  let sum = 0;
  one.forEach((own, r) => {
    const [its, open, price] = [at(other, r), at(minutes, r), at(prices, r)];
    for (let b = 0; b < grid.count; b++)
      if (real(its, b) > 0 || real(price, b) > 0) sum += (real(own, b) * real(its, b)) / Math.max(1, real(open, b));
  });
  return sum;
}

/** Mixes the last excess into the mean, by the share that makes the mean smallest. */
function mixIn({ grid, minutes }: Market, mean: readonly Float64Array[], last: readonly Float64Array[]): void {
  let square = 0;
  let along = 0;
  mean.forEach((own, r) => {
    const [its, open] = [at(last, r), at(minutes, r)];
    for (let b = 0; b < grid.count; b++) {
      const change = real(its, b) - real(own, b);
      square += change ** 2 / Math.max(1, real(open, b));
      along -= (change * real(own, b)) / Math.max(1, real(open, b));
    }
  });
  if (square === 0) return;
  const share = Math.min(mostOfLast, Math.max(leastOfLast, along / square));
  mean.forEach((own, r) => {
    const its = at(last, r);
    for (let b = 0; b < grid.count; b++) own[b] = real(own, b) + share * (real(its, b) - real(own, b));
  });
}

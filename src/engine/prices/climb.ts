import { at } from '../../at.ts';
import { int, real } from '../../typed.ts';
import { type Forest, priceForest } from './forest.ts';
import { type Market, sumUp, want } from './market.ts';
import { priceShape, type Shape } from './shapes.ts';

/** Share of the last direction that the next one keeps; steadies the prices. */
const momentum = 0.8;
/** Rounds without a better bound after which the steps get shorter, and by which share. */
const patience = 5;
const shorter = 0.6;
/** Steps smaller than this gain nothing more. */
const smallestStep = 2e-3;

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
  readonly stop: (() => boolean) | undefined;
}

/** The bound at the market's prices; leaves in the market what is wanted at them. */
export function boundAt({ market, shapes, forest, starts }: Layout, holds: boolean): number {
  const worth = sumUp(market);
  for (const shape of shapes) priceShape(shape, market.grid, market.sums, holds);
  for (const demand of market.demand) demand.fill(0);
  const cheapest = priceForest(forest, (i, shape, bucket) => {
    want(market, shape, bucket, holds);
    starts[i] = int(shape.knots.starts, int(shape.knot, bucket));
  });
  return cheapest - worth;
}

/**
 * Steps towards better prices, from those of the market; leaves it at the best found, and answers their bound, at least
 * `best`, which is theirs to begin with.
 * @param holds charge for what is kept past the end
 */
export function climb(lay: Layout, best: number, rounds: number, firstStep: number, holds: boolean): number {
  const { market, target } = lay;
  const kept = market.prices.map((prices) => prices.slice());
  const direction = market.prices.map((prices) => new Float64Array(prices.length));
  const goBack = (): void => {
    market.prices.forEach((prices, r) => {
      prices.set(at(kept, r));
      at(direction, r).fill(0);
    });
  };
  let step = firstStep;
  let idle = 0;
  for (let round = 0; round < rounds && best < target && step > smallestStep; round++) {
    if (lay.stop?.() === true) break;
    const bound = boundAt(lay, holds);
    lay.seen(lay.starts);
    if (bound > best) {
      best = bound;
      idle = 0;
      market.prices.forEach((prices, r) => at(kept, r).set(prices));
    } else if (++idle === patience) {
      step *= shorter;
      idle = 0;
      goBack();
      boundAt(lay, holds);
    }
    follow(market, direction, (target - bound) * step);
  }
  goBack();
  return best;
}

/** Raises prices where more is wanted than there is and lowers them where less, by steps for a gain of `wanted`. */
function follow(market: Market, directions: readonly Float64Array[], wanted: number): void {
  const { grid, demand, minutes, prices, capacity } = market;
  let square = 0;
  directions.forEach((direction, r) => {
    const [asked, open, price] = [at(demand, r), at(minutes, r), at(prices, r)];
    for (let b = 0; b < grid.count; b++) {
      const excess = real(asked, b) - int(capacity, r) * real(open, b);
      const useful = excess > 0 || real(price, b) > 0 ? excess : 0;
      direction[b] = momentum * real(direction, b) + useful;
      square += real(direction, b) ** 2 / Math.max(1, real(open, b));
    }
  });
  if (square === 0) return;
  directions.forEach((direction, r) => {
    const [open, price] = [at(minutes, r), at(prices, r)];
    for (let b = 0; b < grid.count; b++) {
      const change = real(direction, b) / Math.max(1, real(open, b));
      price[b] = Math.max(0, real(price, b) + (wanted / square) * change);
    }
  });
}

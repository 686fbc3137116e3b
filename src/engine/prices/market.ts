import { at } from '../../at.ts';
import type { Minute } from '../../time/span.ts';
import type { Net } from '../net.ts';
import { byte, int, real } from '../../typed.ts';
import { bucketOf, type Grid } from './grid.ts';
import type { Shape } from './shapes.ts';

/** Prices by resource and bucket, and what goes with them. */
export interface Market {
  readonly grid: Grid;
  readonly capacity: Int32Array;
  readonly open: readonly Uint8Array[];
  /** Price of one open minute of one unit. */
  readonly prices: readonly Float64Array[];
  /** Open minutes by bucket. */
  readonly minutes: readonly Float64Array[];
  /** Unit minutes wanted by bucket. */
  readonly demand: readonly Float64Array[];
  /** Sum of prices before each minute since the grid's start. */
  readonly sums: readonly Float64Array[];
  /** Open minutes before each minute since the grid's start. */
  readonly openBefore: readonly Float64Array[];
}

/** A market without prices. */
export function marketOf(net: Net, grid: Grid, open: readonly Uint8Array[]): Market {
  const perBucket = (): Float64Array[] => open.map(() => new Float64Array(grid.count));
  const perMinute = (): Float64Array[] => open.map(() => new Float64Array(grid.to - grid.from + 1));
  const market: Market = {
    grid,
    capacity: net.capacity,
    open,
    prices: perBucket(),
    minutes: perBucket(),
    demand: perBucket(),
    sums: perMinute(),
    openBefore: perMinute(),
  };
  open.forEach((minutes, r) => {
    const before = at(market.openBefore, r);
    const inBucket = at(market.minutes, r);
    for (let t = 0; t < minutes.length; t++) {
      const one = byte(minutes, t);
      before[t + 1] = real(before, t) + one;
      const b = int(grid.bucketAt, t);
      inBucket[b] = real(inBucket, b) + one;
    }
  });
  return market;
}

/** Gives each bucket of `other` the prices that `market` has where it begins. */
export function carryPrices(market: Market, other: Market): void {
  other.prices.forEach((prices, r) => {
    const own = at(market.prices, r);
    for (let b = 0; b < prices.length; b++) prices[b] = real(own, bucketOf(market.grid, int(other.grid.edges, b)));
  });
}

/** Sums up the prices minute by minute from bucket `from`; answers what all the capacity is worth at them. */
export function sumUp({ grid, capacity, open, prices, minutes, sums }: Market, from = 0): number {
  let worth = 0;
  for (let r = 0; r < prices.length; r++) {
    const price = at(prices, r);
    const sum = at(sums, r);
    const needed = at(open, r);
    const length = at(minutes, r);
    sum[int(grid.edges, from) - grid.from] = 0;
    for (let b = from; b < grid.count - 1; b++) {
      const each = real(price, b);
      const last = int(grid.edges, b + 1) - grid.from;
      for (let t = int(grid.edges, b) - grid.from; t < last; t++)
        sum[t + 1] = real(sum, t) + (byte(needed, t) === 1 ? each : 0);
      worth += int(capacity, r) * each * real(length, b);
    }
  }
  return worth;
}

/** Takes in what a start of `shape` in `bucket`, its cheapest there, wants. */
export function want(market: Market, shape: Shape, bucket: number, holds: boolean): void {
  const knot = int(shape.knot, bucket);
  if (holds)
    for (const held of shape.held)
      addDemand(market, held.resource, held.units, int(held.last, bucket), int(held.until, bucket));
  for (let k = 0; k < shape.resources.length; k++)
    addDemand(
      market,
      at(shape.resources, k),
      at(shape.units, k),
      int(shape.knots.starts, knot),
      int(shape.knots.ends, knot),
    );
}

function addDemand(
  { grid, openBefore, demand: all }: Market,
  r: number,
  units: number,
  start: Minute,
  end: Minute,
): void {
  const before = at(openBefore, r);
  const demand = at(all, r);
  const last = Math.min(end, grid.to);
  let t = Math.max(start, grid.from);
  for (let b = bucketOf(grid, t); t < last; b++) {
    const until = Math.min(last, int(grid.edges, b + 1));
    demand[b] = real(demand, b) + units * (real(before, until - grid.from) - real(before, t - grid.from));
    t = until;
  }
}

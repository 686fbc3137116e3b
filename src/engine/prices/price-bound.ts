import { at } from '../../at.ts';
import type { Minute } from '../../time/span.ts';
import { costsOf } from '../costs.ts';
import type { Labels } from '../labels.ts';
import type { Net } from '../net.ts';
import type { Structure } from '../structure.ts';
import { byte, int, real } from '../../typed.ts';
import { type Forest, forestOf, priceForest, traceChoices } from './forest.ts';
import { bucketOf, type Grid, gridOf, type OpenMinutes, openMinutes } from './grid.ts';
import { priceShape, type Shape, shapesOf } from './shapes.ts';

/** Share of the last direction that the next one keeps; steadies the prices. */
const momentum = 0.6;
/** Rounds without a better bound after which the steps are halved. */
const patience = 8;
/** Steps smaller than this gain nothing more. */
const smallestStep = 4e-3;
/** Lengths of bucket to choose from, in minutes. */
const bucketMinutes = [15, 30, 60, 120, 240];
/** Rounds that a finer grid must leave, and those without which even the coarsest is not worth it. */
const manyRounds = 150;
const fewRounds = 10;

/**
 * A lower bound of the objective by prices on the minutes of the resources (Lagrange multipliers on their capacity).
 * At any prices, the cheapest each part could do for itself, less what the capacity is worth, is a true bound: each
 * part is a forest of waits, cheapest by dynamic programming over buckets of time, everything rounded in its favour.
 * Subgradient steps look for prices that make it high. Exclusions and maximum lags are left out.
 * @param target value of a schedule known, to steer the steps by
 * @param horizon minute after which no minute has a price
 * @param work how many cells of buckets may be priced in all
 * @param options `stop` ends the steps early; `bucketMinutes`: lengths of bucket to choose from, finest first
 */
export function priceBound(
  net: Net,
  labels: Labels,
  structure: Structure,
  target: number,
  horizon: Minute,
  work: number,
  options: { readonly stop?: (() => boolean) | undefined; readonly bucketMinutes?: readonly number[] } = {},
): number {
  const from = net.problem.from;
  const to = Math.max(from + 2, Math.min(net.problem.to, horizon));
  const open = openMinutes(net, from, to);
  const grid = gridThatFits(net, open, from, to, work, options.bucketMinutes ?? bucketMinutes);
  if (grid === undefined) return -Infinity;
  const { shapes, byMode } = shapesOf(net, labels, grid);
  const { terms } = costsOf(net, labels);
  const forest = forestOf(net, labels, structure, terms, grid, byMode);
  const market = marketOf(net, grid, open.needed);
  const rounds = Math.floor(work / cellsOf(net, grid));
  const lay: Layout = { grid, shapes, forest, market, target, stop: options.stop };
  // Charging for what is kept past the end can only raise the bound, but finding prices for it from nothing is slow.
  const plain = climb(lay, -Infinity, rounds * 0.6, 1, false);
  const best = climb(lay, plain, rounds * 0.4, 0.3, true);
  return best - Math.abs(best) * 1e-9;
}

interface Layout {
  readonly grid: Grid;
  readonly shapes: readonly Shape[];
  readonly forest: Forest;
  readonly market: Market;
  readonly target: number;
  readonly stop: (() => boolean) | undefined;
}

/** Steps towards better prices; leaves the market at the best found, and answers their bound, at least `best`. */
function climb(lay: Layout, best: number, rounds: number, firstStep: number, holds: boolean): number {
  const { market, target } = lay;
  const kept = market.prices.map((prices) => prices.slice());
  const goBack = (): void => {
    market.prices.forEach((prices, r) => {
      prices.set(at(kept, r));
      at(market.direction, r).fill(0);
    });
  };
  let step = firstStep;
  let idle = 0;
  for (let round = 0; round < rounds && best < target && step > smallestStep; round++) {
    if (lay.stop?.() === true) break;
    const bound = boundAt(lay, holds);
    if (bound > best) {
      best = bound;
      idle = 0;
      market.prices.forEach((prices, r) => at(kept, r).set(prices));
    } else if (++idle === patience) {
      step /= 2;
      idle = 0;
      goBack();
      boundAt(lay, holds);
    }
    adjust(lay, (target - bound) * step, holds);
  }
  goBack();
  return best;
}

/** Prices by resource and bucket, and what goes with them. */
interface Market {
  readonly capacity: Int32Array;
  readonly open: readonly Uint8Array[];
  /** Price of one open minute of one unit. */
  readonly prices: readonly Float64Array[];
  /** Open minutes by bucket. */
  readonly minutes: readonly Float64Array[];
  readonly direction: readonly Float64Array[];
  readonly demand: readonly Float64Array[];
  /** Sum of prices before each minute since the grid's start. */
  readonly sums: readonly Float64Array[];
  /** Open minutes before each minute since the grid's start. */
  readonly openBefore: readonly Float64Array[];
}

function marketOf(net: Net, grid: Grid, open: readonly Uint8Array[]): Market {
  const perBucket = (): Float64Array[] => open.map(() => new Float64Array(grid.count));
  const perMinute = (): Float64Array[] => open.map(() => new Float64Array(grid.to - grid.from + 1));
  const market: Market = {
    capacity: net.capacity,
    open,
    prices: perBucket(),
    minutes: perBucket(),
    direction: perBucket(),
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

function boundAt({ market, grid, shapes, forest }: Layout, holds: boolean): number {
  let worth = 0;
  market.prices.forEach((prices, r) => {
    const sum = at(market.sums, r);
    const open = at(market.open, r);
    const minutes = at(market.minutes, r);
    for (let t = 0; t < open.length; t++)
      sum[t + 1] = real(sum, t) + (byte(open, t) === 1 ? real(prices, int(grid.bucketAt, t)) : 0);
    for (let b = 0; b < grid.count; b++) worth += int(market.capacity, r) * real(prices, b) * real(minutes, b);
  });
  for (const shape of shapes) priceShape(shape, grid, market.sums, holds);
  return priceForest(forest) - worth;
}

/** Raises prices where more is wanted than there is and lowers them where less, by steps for a gain of `wanted`. */
function adjust({ market, grid, forest }: Layout, wanted: number, holds: boolean): void {
  traceChoices(forest);
  for (const demand of market.demand) demand.fill(0);
  forest.nodes.forEach((node, k) => {
    const { shape } = at(node.modes, int(forest.chosenMode, k));
    const b = int(forest.chosenBucket, k);
    const knot = int(shape.knot, b);
    for (const held of holds ? shape.held : [])
      addDemand(market, grid, held.resource, held.units, int(held.last, b), int(held.until, b));
    for (const [r, resource] of shape.resources.entries())
      addDemand(market, grid, resource, at(shape.units, r), int(shape.knots.starts, knot), int(shape.knots.ends, knot));
  });
  let square = 0;
  market.direction.forEach((direction, r) => {
    for (let b = 0; b < grid.count; b++) {
      const excess = real(at(market.demand, r), b) - int(market.capacity, r) * real(at(market.minutes, r), b);
      const useful = excess > 0 || real(at(market.prices, r), b) > 0 ? excess : 0;
      direction[b] = momentum * real(direction, b) + useful;
      square += real(direction, b) ** 2;
    }
  });
  if (square === 0) return;
  market.prices.forEach((prices, r) => {
    const direction = at(market.direction, r);
    for (let b = 0; b < grid.count; b++)
      prices[b] = Math.max(0, real(prices, b) + (wanted / square) * real(direction, b));
  });
}

function addDemand(market: Market, grid: Grid, r: number, units: number, start: Minute, end: Minute): void {
  const before = at(market.openBefore, r);
  const demand = at(market.demand, r);
  const last = Math.min(end, grid.to);
  let t = Math.max(start, grid.from);
  for (let b = bucketOf(grid, t); t < last; b++) {
    const until = Math.min(last, int(grid.edges, b + 1));
    demand[b] = real(demand, b) + units * (real(before, until - grid.from) - real(before, t - grid.from));
    t = until;
  }
}

function cellsOf(net: Net, grid: Grid): number {
  return grid.count * (net.modes.length + net.count);
}

/** The finest grid that leaves rounds enough, or the coarsest if it leaves a few; else none. */
function gridThatFits(
  net: Net,
  open: OpenMinutes,
  from: Minute,
  to: Minute,
  work: number,
  lengths: readonly number[],
): Grid | undefined {
  for (const [k, length] of lengths.entries()) {
    const grid = gridOf(net, open, from, to, length);
    const rounds = work / cellsOf(net, grid);
    if (rounds >= (k === lengths.length - 1 ? fewRounds : manyRounds)) return grid;
  }
  return undefined;
}

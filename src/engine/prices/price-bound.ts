import { at } from '../../at.ts';
import type { Minute } from '../../time/span.ts';
import { costsOf } from '../costs.ts';
import type { Labels } from '../labels.ts';
import type { Net } from '../net.ts';
import type { Structure } from '../structure.ts';
import { real } from '../../typed.ts';
import { boundAt, climb, type Layout } from './climb.ts';
import { firstPrices, type Known } from './first-prices.ts';
import { forestOf } from './forest.ts';
import { type Grid, gridOf, type OpenMinutes, openMinutes } from './grid.ts';
import { carryPrices, type Market, marketOf } from './market.ts';
import { meansInto } from './means.ts';
import { namingOf } from './naming.ts';
import { shapesOf } from './shapes.ts';
import { branchesOf } from './trees.ts';

/** Lengths of bucket to choose from, in minutes. */
const bucketMinutes = [15, 30, 60, 120, 240];
/** Buckets of this length count as fine. */
const fineMinutes = 60;
/** Rounds that a finer grid must leave, and those without which even the coarsest is not worth it. */
const manyRounds = 50;
const fewRounds = 14;
/**
 * Length of the buckets in which the settled prices are looked at once more: a step that just does not fit into a day any more is
 * taken to fit where buckets are longer. It must leave as many rounds.
 */
const finestMinutes = 5;
const fineRounds = 4;
/** Prices have mostly settled after as many; since laying out costs more than a round, up to twice the work goes into them. */
const settledRounds = 160;
/** Shares of the first prices that are tried, until one is no better than that before. */
const firstShares = [0.8, 0.6, 0.4, 0.2, 0.1];
/** What the prices tell. */
export interface Priced {
  /** No schedule is cheaper. */
  readonly bound: number;
  /** Orders of placing, smallest first, by activity: when its cheapest starts lay, in some rounds. */
  readonly orders: readonly Float64Array[];
  /** The prices; absent where none were looked for, or only roughly. */
  readonly market?: Market;
}

/** How a bound by prices is looked for. */
export interface PriceOptions {
  /** How many cells of buckets may be priced in all. */
  readonly work: number;
  /** As many instead, until prices have settled, where `work` leaves many rounds on a fine grid: there laying out is cheap. */
  readonly settlingWork?: number;
  /** Most orders to answer. */
  readonly orders?: number;
  /** True ends the steps early. */
  readonly stop?: (() => boolean) | undefined;
  /** Lengths of bucket to choose from, finest first. */
  readonly bucketMinutes?: readonly number[];
  /** Length of the buckets in which the settled prices are looked at. */
  readonly finestMinutes?: number;
}

/**
 * A lower bound of the objective by prices on the minutes of the resources (Lagrange multipliers on their capacity).
 * At any prices, the cheapest each part could do for itself, less what the capacity is worth, is a true bound: each
 * part is a forest of waits with their windows, cheapest by dynamic programming over buckets of time, everything rounded in its
 * favour. The volume algorithm looks for prices that make it high. Exclusions are left out, and all lags but those to one later
 * activity each.
 *
 * Where the cheapest starts lie while prices settle is a good order of placing, too: list schedules by the starts of a
 * relaxation (Möhring, Schulz, Stork, Uetz, "Solving project scheduling problems by minimum cut computations", Management
 * Science 49, 2003; from memory).
 * @param known a schedule, to steer the steps by
 * @param horizon minute after which no minute has a price
 */
export function priceBound(
  net: Net,
  labels: Labels,
  structure: Structure,
  known: Known,
  horizon: Minute,
  options: PriceOptions,
): Priced {
  const from = net.problem.from;
  const to = Math.max(from + 2, Math.min(net.problem.to, horizon));
  const open = openMinutes(net, from, to);
  const lengths = options.bucketMinutes ?? bucketMinutes;
  const pays = isFine(net, open, from, to, options.work);
  const work = pays ? Math.max(options.work, options.settlingWork ?? 0) : options.work;
  const grid = gridThatFits(net, open, from, to, work, lengths);
  if (grid === undefined) return { bound: -Infinity, orders: [] };
  const { terms } = costsOf(net, labels);
  const branches = branchesOf(net, labels, structure, terms);
  const laidOut = (cut: Grid): Pick<Layout, 'shapes' | 'forest' | 'market'> => {
    const naming = namingOf();
    const { shapes, byMode } = shapesOf(net, labels, branches, cut, naming);
    const forest = forestOf(net, labels, structure, terms, branches, cut, byMode, naming);
    return { shapes, forest, market: marketOf(net, cut, open.needed) };
  };
  const laid = laidOut(grid);
  const affordable = work / laid.forest.work;
  const rounds = Math.floor(Math.max(fewRounds, affordable, Math.min(2 * affordable, settledRounds)));
  const orders: Float64Array[] = [];
  const lay: Layout = {
    ...laid,
    target: known.value,
    seen: meansInto(orders, net.count, rounds, options.orders ?? 0),
    starts: new Float64Array(net.count),
    stop: options.stop,
  };
  const guessed = bestShare(lay, firstPrices(net, labels, structure, terms, laid.market, known));
  let best = climb(lay, guessed, rounds);
  const finest = gridOf(open, from, to, options.finestMinutes ?? finestMinutes);
  // Laying out the finest takes seconds in a large shop: not for somebody who has asked for an end.
  const fineEnough = finest.count > grid.count && fineRounds * cellsOf(net, finest.count) <= work;
  if (fineEnough && options.stop?.() !== true) {
    const fine = laidOut(finest);
    carryPrices(laid.market, fine.market);
    best = Math.max(best, boundAt({ ...lay, ...fine }, true));
  }
  return { bound: best - Math.abs(best) * 1e-9, orders, ...(pays && { market: laid.market }) };
}

/** Leaves the market at the share of the `first` prices that has the best bound, and answers that. */
function bestShare(lay: Layout, first: readonly Float64Array[]): number {
  let best = -Infinity;
  let bestShare = 0;
  const setTo = (share: number): void => {
    lay.market.prices.forEach((prices, r) => {
      const own = at(first, r);
      for (let b = 0; b < prices.length; b++) prices[b] = share * real(own, b);
    });
  };
  for (const share of first.some((prices) => prices.some((price) => price > 0)) ? firstShares : [0]) {
    setTo(share);
    const bound = boundAt(lay, false);
    if (bound <= best) break;
    best = bound;
    bestShare = share;
  }
  setTo(bestShare);
  return best;
}

/** How much there is to lay out and to price in a round, roughly: more for modes that hang on many lags. */
function cellsOf(net: Net, buckets: number): number {
  return buckets * net.modes.reduce((sum, mode) => sum + 1 + at(net.touching, mode.activity).length / 4, 0);
}

/** Does `work` leave many rounds on a fine grid? */
function isFine(net: Net, open: OpenMinutes, from: Minute, to: Minute, work: number): boolean {
  const most = work / manyRounds;
  return cellsOf(net, open.edges) <= most && cellsOf(net, gridOf(open, from, to, fineMinutes).count) <= most;
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
    const least = k === lengths.length - 1 ? fewRounds : manyRounds;
    if (work < least * cellsOf(net, open.edges)) continue;
    const grid = gridOf(open, from, to, length);
    if (work >= least * cellsOf(net, grid.count)) return grid;
  }
  return undefined;
}

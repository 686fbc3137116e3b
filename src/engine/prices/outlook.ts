import { at } from '../../at.ts';
import type { Minute } from '../../time/span.ts';
import { costsOf } from '../costs.ts';
import type { Labels } from '../labels.ts';
import type { Net } from '../net.ts';
import type { Structure } from '../structure.ts';
import { int, real } from '../../typed.ts';
import { boundAt, climb } from './climb.ts';
import { type Forest, forestOf } from './forest.ts';
import { bucketOf, gridOf, openMinutes } from './grid.ts';
import { carryPrices, type Market, marketOf, sumUp } from './market.ts';
import { meansInto } from './means.ts';
import { namingOf } from './naming.ts';
import { priceTree } from './price-forest.ts';
import { narrow, type Settled } from './settled.ts';
import { priceShape, type Shape, shapesOf } from './shapes.ts';
import { branchesOf } from './trees.ts';

/** Length of the buckets, in minutes: an outlook is asked for over and over. */
const usualMinutes = 60;

/** What all costs at prices when what starts before a minute is settled: at the least, and if the prices are right, about so much. */
interface Look {
  readonly shapes: readonly Shape[];
  readonly forest: Forest;
  /** The prices from that minute on. */
  readonly market: Market;
  /** What the capacity is worth at them. */
  worth: number;
  until: Minute;
  /** By component: what it costs, by what of it starts between the minute before which all is settled for good and `until`. */
  readonly known: readonly Map<string, number>[];
}

/** Prices for what is not yet settled of a schedule, and looks at what it costs when more of it is. */
export interface Outlook {
  readonly net: Net;
  readonly market: Market;
  readonly looks: readonly [Look, Look];
  /** The minute before which all is settled for good. */
  since: Minute;
}

/** An outlook at the prices of `market`, which was laid out for the same net. */
export function outlookOf(
  net: Net,
  labels: Labels,
  structure: Structure,
  market: Market,
  bucketMinutes = usualMinutes,
): Outlook {
  const { from, to } = market.grid;
  const open = openMinutes(net, from, to);
  const grid = gridOf(open, from, to, bucketMinutes);
  const { terms } = costsOf(net, labels);
  const branches = branchesOf(net, labels, structure, terms);
  const look = (): Look => {
    const naming = namingOf();
    const { shapes, byMode } = shapesOf(net, labels, branches, grid, naming);
    const forest = forestOf(net, labels, structure, terms, branches, grid, byMode, naming);
    const known = forest.trees.map(() => new Map<string, number>());
    return { shapes, forest, market: marketOf(net, grid, open.needed), worth: 0, until: from, known };
  };
  const own = marketOf(net, grid, open.needed);
  carryPrices(market, own);
  return { net, market: own, looks: [look(), look()], since: from };
}

/** How prices are found anew. */
interface Repricing {
  /** Value of a schedule known, to steer the steps by. */
  readonly target: number;
  readonly rounds: number;
  /** Most orders to answer. */
  readonly most: number;
  /** True ends the steps early. */
  readonly stop: (() => boolean) | undefined;
}

/**
 * Finds prices for what is left when all that starts before `since` is settled as in `settled`, and answers orders to place the
 * rest by.
 */
export function reprice(
  { net, market, looks: [{ shapes, forest }] }: Outlook,
  settled: Settled,
  since: Minute,
  { target, rounds, most, stop }: Repricing,
): readonly Float64Array[] {
  const from = bucketOf(market.grid, since);
  for (const tree of forest.trees) narrow(forest, tree, market.grid, settled, since, from);
  for (const prices of market.prices) prices.fill(0, 0, from);
  const orders: Float64Array[] = [];
  const seen = meansInto(orders, net.count, rounds, most);
  const lay = { shapes, forest, market, target, seen, starts: new Float64Array(net.count), from, stop };
  climb(lay, boundAt(lay, true), rounds);
  return orders;
}

/** Makes ready for asking what all costs when more is settled, up to one and the other of two minutes, than what is for good. */
export function lookFrom(outlook: Outlook, since: Minute, untils: readonly [Minute, Minute]): void {
  outlook.since = since;
  outlook.looks.forEach((look, k) => {
    const { market, shapes, known } = look;
    look.until = at(untils, k);
    const first = bucketOf(market.grid, look.until);
    market.prices.forEach((prices, r) => {
      const own = at(outlook.market.prices, r);
      for (let b = 0; b < prices.length; b++) prices[b] = b < first ? 0 : real(own, b);
    });
    look.worth = sumUp(market);
    for (const shape of shapes) priceShape(shape, market.grid, market.sums, true);
    for (const own of known) own.clear();
  });
}

/** What all costs if `settled` is, as far as each look goes: the mean of the two. */
export function costFrom({ since, looks }: Outlook, settled: Settled): number {
  return (lookAt(looks[0], since, settled) + lookAt(looks[1], since, settled)) / 2;
}

function lookAt({ forest, market, worth, until, known }: Look, since: Minute, settled: Settled): number {
  const { grid } = market;
  const from = bucketOf(grid, until);
  let cost = -worth;
  forest.trees.forEach((tree, c) => {
    const memo = at(known, c);
    let name = '';
    for (const { activity } of tree.nodes) {
      const start = int(settled.starts, activity);
      if (start >= since && start < until) name += `${activity}:${start}:${int(settled.modes, activity)} `;
    }
    let own = memo.get(name);
    if (own === undefined) {
      narrow(forest, tree, grid, settled, until, from);
      own = priceTree(forest, tree, from);
      memo.set(name, own);
    }
    cost += own;
  });
  return cost;
}

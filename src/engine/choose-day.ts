import { at } from '../at.ts';
import { DAY_MINUTES, type Minute } from '../time/span.ts';
import { moveMembers, shuffle, stretchOf } from './change-key.ts';
import { type Incumbent, keep } from './improve.ts';
import { placingOrder } from './order.ts';
import type { Plan } from './plan.ts';
import { costFrom, type Outlook } from './prices/outlook.ts';
import type { SearchOptions } from './problem.ts';
import { freeMembers, type Search } from './search.ts';
import { tryOrders } from './try-orders.ts';
import { int, real } from '../typed.ts';

/** Orders tried for each day. */
export const triesEach = 40;
/** How much dearer than the last kept an order may look at first: a share of what all costs, on the average. */
const warmth = 0.0003;
/** How often a component of the day, any component, and some single activities of the day are moved; else the day is shuffled. */
const ownShare = 0.4;
const anyShare = 0.2;
const fewShare = 0.2;
/** By how many days and minutes these move, mostly. */
const ownDays = 1;
const anyDays = 2;
const fewMinutes = 600;
const mostOfFew = 3;
/** How far into the day after a component may begin that counts as of the day. */
const intoNext = DAY_MINUTES / 2;
/** How often one of the day is drawn out or pressed together. */
const stretchShare = 0.5;
/** By up to how many hours the two days are shuffled. */
const shuffleHours = 12;

/** A whole plan, and the order that has led to it. */
export interface Laid {
  readonly key: Float64Array;
  readonly starts: Int32Array;
  readonly modes: Int32Array;
  readonly value: number;
  /** What all seems to cost, by what starts on the first days. */
  readonly seeming: number;
}

/**
 * Lays what is left, beside what is in `begun`, in some `orders`, and then again and again in the best of them, changed a little.
 * Answers the plan whose first days leave the least to be paid, by the `outlook`; none if no order can be laid.
 */
export function chooseDay(
  search: Search,
  options: SearchOptions,
  incumbent: Incumbent,
  outlook: Outlook,
  begun: Plan,
  orders: readonly Float64Array[],
): Laid | undefined {
  const { plan, inserter, structure, pinned } = search;
  const list = [...pinned.keys()].filter((i) => !begun.isPlaced(i));
  const lay = (key: Float64Array): boolean => {
    plan.become(begun);
    return inserter.insert(placingOrder(structure, list, key, false), Infinity);
  };
  const costOf = (): number => {
    keep(search, options, incumbent);
    return costFrom(outlook, plan);
  };
  let best: Laid | undefined;
  const consider = (key: Float64Array, seeming: number): void => {
    if (best !== undefined && seeming >= best.seeming) return;
    const { starts, modes, value } = plan;
    best = { key, starts: starts.slice(), modes: modes.slice(), value, seeming };
  };
  for (const given of orders) {
    const key = given.map((own, i) => (pinned[i] === 1 ? -Infinity : own));
    if (lay(key)) consider(key, costOf());
  }
  if (best === undefined || !lay(best.key)) return best;
  tryOrders(search, options, {
    list,
    key: best.key,
    cost: best.seeming,
    changed: (key) => changed(search, list, key, outlook.since),
    costOf,
    onKept: consider,
    warmth,
    left: (tries) => 1 - tries / triesEach,
  });
  return best;
}

/** The order with a component or some activities of the day, or a component of any, earlier or later; or with two days shuffled. */
function changed(search: Search, left: readonly number[], key: Float64Array, since: Minute): Float64Array {
  const { plan, random } = search;
  const next = Float64Array.from(key);
  const before = (until: Minute) => left.filter((i) => int(plan.starts, i) < until);
  const chance = random.unit();
  if (chance < ownShare) {
    const stretch = stretchOf(random, stretchShare);
    moveComponent(
      search,
      before(since + DAY_MINUTES + intoNext),
      since,
      next,
      ownDays * DAY_MINUTES * bell(random),
      stretch,
    );
  } else if (chance < ownShare + anyShare) {
    moveComponent(search, left, since, next, anyDays * DAY_MINUTES * bell(random), 1);
  } else if (chance < ownShare + anyShare + fewShare) {
    const list = before(since + DAY_MINUTES);
    for (let few = list.length === 0 ? 0 : 1 + random.below(mostOfFew); few > 0; few--) {
      const i = at(list, random.below(list.length));
      next[i] = real(next, i) + fewMinutes * bell(random);
    }
  } else {
    shuffle(next, before(since + 2 * DAY_MINUTES), shuffleHours, random);
  }
  return next;
}

/** Moves what is left of a component that one of `list` belongs to. */
function moveComponent(
  search: Search,
  list: readonly number[],
  since: Minute,
  key: Float64Array,
  minutes: number,
  stretch: number,
): void {
  const { plan, random, structure } = search;
  if (list.length === 0) return;
  const component = int(structure.componentOf, at(list, random.below(list.length)));
  const members = freeMembers(search, component).filter((i) => int(plan.starts, i) >= since);
  moveMembers(key, members, minutes, stretch);
}

/** A number from about the normal distribution. */
function bell(random: Search['random']): number {
  return Math.sqrt(3) * (random.unit() + random.unit() + random.unit() + random.unit() - 2);
}

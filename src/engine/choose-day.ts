import { at } from '../at.ts';
import type { Minute } from '../time/span.ts';
import { type Incumbent, keep } from './improve.ts';
import { placingOrder } from './order.ts';
import type { Plan } from './plan.ts';
import { costFrom, type Outlook } from './prices/outlook.ts';
import type { SearchOptions } from './problem.ts';
import { freeMembers, removeAll, type Search } from './search.ts';
import { int, real } from '../typed.ts';

export const day = 24 * 60;

/** Orders tried for each day. */
export const triesEach = 40;
/** How much dearer than the last kept an order may look at first: a share of what all costs, on the average. */
const warmth = 0.0003;
/** How often `stop` is asked, in orders tried. */
const stopEvery = 4;
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
const intoNext = day / 2;
/** How often, and by how much at most, one of the day is drawn out or pressed together. */
const stretchShare = 0.5;
const stretchBy = 0.5;
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
  const { plan, inserter, random, structure, pinned } = search;
  const left = [...pinned.keys()].filter((i) => !begun.isPlaced(i));
  const ordered = (key: Float64Array): number[] => placingOrder(structure, left, key, false);
  const laid = (key: Float64Array): Laid => {
    keep(search, options, incumbent);
    const { starts, modes, value } = plan;
    return { key, starts: starts.slice(), modes: modes.slice(), value, seeming: costFrom(outlook, plan) };
  };
  let best: Laid | undefined;
  for (const given of orders) {
    const key = given.map((own, i) => (pinned[i] === 1 ? -Infinity : own));
    plan.become(begun);
    if (!inserter.insert(ordered(key), Infinity)) continue;
    const made = laid(key);
    if (best === undefined || made.seeming < best.seeming) best = made;
  }
  if (best === undefined) return undefined;
  let { key, seeming } = best;
  let order = ordered(key);
  plan.become(begun);
  if (!inserter.insert(order, Infinity)) return best;
  const kept = plan.twin();
  for (let tries = 0; tries < triesEach; tries++) {
    if (tries % stopEvery === 0 && options.stop?.() === true) break;
    const cooler = 1 - tries / triesEach;
    const limit = seeming - Math.log(1 - random.unit()) * warmth * cooler * Math.abs(seeming);
    const nextKey = changed(search, left, key, outlook.since);
    const next = ordered(nextKey);
    const from = next.findIndex((i, k) => i !== at(order, k));
    inserter.steps += 1;
    if (from < 0) continue;
    removeAll(search, order.slice(from).reverse());
    const made = inserter.insert(next.slice(from), Infinity) ? laid(nextKey) : undefined;
    if (made === undefined || made.seeming > limit) {
      plan.become(kept);
      continue;
    }
    kept.become(plan);
    order = next;
    ({ key, seeming } = made);
    if (seeming < best.seeming) best = made;
  }
  return best;
}

/** The order with a component or some activities of the day, or a component of any, earlier or later; or with two days shuffled. */
function changed(search: Search, left: readonly number[], key: Float64Array, since: Minute): Float64Array {
  const { plan, random } = search;
  const next = Float64Array.from(key);
  const before = (until: Minute) => left.filter((i) => int(plan.starts, i) < until);
  const chance = random.unit();
  if (chance < ownShare) {
    const stretch = random.unit() < stretchShare ? 1 + stretchBy * (2 * random.unit() - 1) : 1;
    moveComponent(search, before(since + day + intoNext), since, next, ownDays * day * bell(random), stretch);
  } else if (chance < ownShare + anyShare) {
    moveComponent(search, left, since, next, anyDays * day * bell(random), 1);
  } else if (chance < ownShare + anyShare + fewShare) {
    const list = before(since + day);
    for (let few = list.length === 0 ? 0 : 1 + random.below(mostOfFew); few > 0; few--) {
      const i = at(list, random.below(list.length));
      next[i] = real(next, i) + fewMinutes * bell(random);
    }
  } else {
    const noise = 60 * (1 + random.below(shuffleHours));
    for (const i of before(since + 2 * day)) next[i] = real(next, i) + noise * (random.unit() - 0.5);
  }
  return next;
}

/** Moves what is left of a component that one of `list` belongs to. */
function moveComponent(
  search: Search,
  list: readonly number[],
  since: Minute,
  key: Float64Array,
  shift: number,
  stretch: number,
): void {
  const { plan, random, structure } = search;
  if (list.length === 0) return;
  const component = int(structure.componentOf, at(list, random.below(list.length)));
  const members = freeMembers(search, component).filter((i) => int(plan.starts, i) >= since);
  const begin = members.reduce((least, i) => Math.min(least, real(key, i)), Infinity);
  for (const i of members) key[i] = begin + (real(key, i) - begin) * stretch + shift;
}

/** A number from about the normal distribution. */
function bell(random: Search['random']): number {
  return Math.sqrt(3) * (random.unit() + random.unit() + random.unit() + random.unit() - 2);
}

import { at } from '../at.ts';
import { DAY_MINUTES, type Minute } from '../time/span.ts';
import { chooseDay, type Laid, triesEach } from './choose-day.ts';
import { emptyPlan } from './construct.ts';
import type { Incumbent } from './improve.ts';
import { lookFrom, type Outlook, reprice } from './prices/outlook.ts';
import type { SearchOptions } from './problem.ts';
import type { Search } from './search.ts';
import { int } from '../typed.ts';

/** How far ahead the farther of the two looks of a morning goes, in days. */
const daysAhead = 2;
/** Rounds of prices of a morning, and orders that they give. */
const rounds = 15;
const ordersEach = 8;
/** How many plans begin on the first morning, before a later one is gone back to. */
const dawns = 3;
/** Over which share of a plan's mornings, from the first on, it is gone back to. */
const backShare = 0.6;
/** A plan that seems dearer than the best did on that morning, by this share, is given up. */
const dearer = 0.005;

/** A morning: all that starts before it stays where the plan of the day before has it. */
interface Morning {
  readonly since: Minute;
  /** The plan of the day before; absent on the first. */
  readonly last: Laid | undefined;
  readonly prices: readonly Float64Array[];
  /** The plan of this day. */
  readonly next: Laid;
}

type Begin = Omit<Morning, 'next'>;

/** About how many placements it takes to settle all of the incumbent's days once. */
export function placementsOfOne({ net }: Search, { starts }: Incumbent): number {
  const last = starts.reduce((latest, start) => Math.max(latest, start), net.problem.from);
  const days = Math.ceil((last - net.problem.from) / DAY_MINUTES);
  return (days * (triesEach + ordersEach) * net.count) / 2;
}

/**
 * Settles one day after another: tries orders of what is left, and keeps what starts on that day in the order after which the rest
 * costs least, by prices for what is then left of hands and places. Objectives move in leaps, and what a day does to them shows
 * weeks later; the prices tell at once. Having settled all a few times, it goes back to some morning of the best plan so made and
 * tries again from there. Begins with the `first` orders, and ends when the inserter has counted `until` steps.
 */
export function dayByDay(
  search: Search,
  options: SearchOptions,
  incumbent: Incumbent,
  outlook: Outlook,
  first: readonly Float64Array[],
  until: number,
): void {
  const { inserter, random, net } = search;
  const isOver = () => inserter.steps >= until || incumbent.value <= incumbent.bound || options.stop?.() === true;
  const dawn: Begin = { since: net.problem.from, last: undefined, prices: copyOf(outlook.market.prices) };
  let best: readonly Morning[] = [];
  for (let plans = 0; !isOver(); plans++) {
    const back = plans < dawns ? 0 : random.below(Math.max(1, Math.ceil(best.length * backShare)));
    const begin = best[back] ?? dawn;
    const made = settleFrom(search, options, incumbent, outlook, first, begin, best.slice(back), isOver);
    if (made !== undefined && valueOf(made) <= valueOf(best)) best = [...best.slice(0, back), ...made];
  }
}

function valueOf(mornings: readonly Morning[]): number {
  return mornings[mornings.length - 1]?.next.value ?? Infinity;
}

function copyOf(prices: readonly Float64Array[]): readonly Float64Array[] {
  return prices.map((own) => own.slice());
}

/** Settles what is left on the morning of `begin`; gives up where it seems dearer than `known`, what was settled from there. */
function settleFrom(
  search: Search,
  options: SearchOptions,
  incumbent: Incumbent,
  outlook: Outlook,
  first: readonly Float64Array[],
  begin: Begin,
  known: readonly Morning[],
  isOver: () => boolean,
): readonly Morning[] | undefined {
  const { plan } = search;
  const made: Morning[] = [];
  outlook.market.prices.forEach((own, r) => {
    own.set(at(begin.prices, r));
  });
  let last = begin.last;
  for (let { since } = begin; ; since += DAY_MINUTES) {
    if (last?.starts.every((start) => start < since) === true) return made;
    if (last?.starts.every((start) => start < since || start >= since + DAY_MINUTES) === true) continue;
    emptyPlan(search);
    if (last !== undefined) placeBefore(search, last, since);
    const begun = plan.twin();
    const prices = copyOf(outlook.market.prices);
    const target = incumbent.value;
    const { stop } = options;
    const orders =
      last === undefined
        ? first
        : [last.key, ...reprice(outlook, last, since, { target, rounds, most: ordersEach, stop })];
    lookFrom(outlook, since, [since + DAY_MINUTES, since + daysAhead * DAY_MINUTES]);
    const next = chooseDay(search, options, incumbent, outlook, begun, orders);
    if (next === undefined || isOver()) return undefined;
    const before = known[made.length]?.next.seeming ?? Infinity;
    if (next.seeming - before > dearer * Math.abs(before)) return undefined;
    made.push({ since, last, prices, next });
    last = next;
  }
}

function placeBefore({ plan }: Search, { starts, modes }: Laid, since: Minute): void {
  starts.forEach((start, i) => {
    if (start < since) plan.place(i, int(modes, i), start);
  });
}

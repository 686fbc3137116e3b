import { at } from '../at.ts';
import type { Minute } from '../time/span.ts';
import { NEVER } from '../time/time-map.ts';
import { int } from '../typed.ts';
import { type Incumbent, restore } from './improve.ts';
import { Labels } from './labels.ts';
import { netOf } from './net.ts';
import type { Problem, Schedule } from './problem.ts';
import { scheduleOf } from './schedule-of.ts';
import { homeOf, insertAll, placesOf, removeAll, type Search, searchOf } from './search.ts';
import { violations } from './valid.ts';
import { termValue } from './value.ts';

export interface PutBackOptions {
  /** Says in which modes things were at home. */
  readonly from: Schedule;
  /** What is tried as a whole: the activities of one piece of work, say. */
  readonly wholes: readonly (readonly number[])[];
}

/**
 * Puts back what moved off its home (the `at` of its `moved` term) and need not have: first what moved of each whole, all of
 * it in the modes of `from`, then each activity alone, in any mode, at home or as near behind it as there is room, until
 * nothing gets nearer any more. All else stays where it is; only what takes up nothing (that a piece is ready, that a place is cleared) may follow. What goes back stays there only
 * if no rule is broken, no `late` term and no modes cost more, and its moves cost less.
 *
 * So in the answer no single activity can go home, and no whole in the modes of `from`, all else staying as it is, unless a
 * rule were broken, a date later or more work called for. That others together cannot is not promised.
 *
 * `schedule` must be valid.
 * @throws {Error} if the answer breaks a rule of the problem, which is a defect.
 */
export function putBack(problem: Problem, schedule: Schedule, { from, wholes }: PutBackOptions): Schedule {
  if (problem.objective.every((term) => term.kind !== 'moved' || schedule.starts[term.activity] === term.at))
    return schedule;
  const net = netOf(problem);
  const labels = new Labels(net);
  if (!labels.propagate()) return schedule;
  const search = searchOf(net, labels, 0);
  const answer: Incumbent = {
    value: 0,
    bound: 0,
    starts: Int32Array.from(schedule.starts),
    modes: Int32Array.from(schedule.modes, (m, i) => int(net.modeFirst, i) + m),
  };
  restore(search, answer);
  while (putEachBack(search, from, wholes));
  answer.starts.set(search.plan.starts);
  answer.modes.set(search.plan.modes);
  const found = scheduleOf(net, answer);
  const [broken] = violations(problem, found);
  if (broken !== undefined) throw new Error(`what was put back breaks a rule: ${JSON.stringify(broken)}`);
  return found;
}

function putEachBack(search: Search, from: Schedule, wholes: PutBackOptions['wholes']): boolean {
  let changed = false;
  for (const whole of wholes) {
    const moved = whole.filter((i) => isOff(search, i));
    if (moved.length > 1) changed = wholeGoesHome(search, moved, from) || changed;
  }
  const moved = [...search.plan.starts.keys()].filter((i) => isOff(search, i));
  for (const i of moved.sort((a, b) => homeIn(search, a) - homeIn(search, b)))
    changed = goesNear(search, i, from) || changed;
  return changed;
}

function isOff(search: Search, i: number): boolean {
  const home = homeOf(search, i);
  return home !== undefined && search.pinned[i] === 0 && int(search.plan.starts, i) !== home;
}

function homeIn(search: Search, i: number): Minute {
  return homeOf(search, i) ?? int(search.plan.starts, i);
}

function wholeGoesHome(search: Search, whole: readonly number[], from: Schedule): boolean {
  const { plan, net } = search;
  return attempt(search, whole, followersOf(search, whole), () => {
    for (const i of whole) {
      const mode = modeAtHome(search, i, from);
      const home = homeIn(search, i);
      if (at(net.modes, mode).slots.fit(home) !== home) return false;
      plan.place(i, mode, home);
    }
    return true;
  });
}

/** Places `i` alone at home or as near behind it as there is room. */
function goesNear(search: Search, i: number, from: Schedule): boolean {
  const followers = followersOf(search, [i]);
  const ways = followers.length > 0 ? [[], followers] : [[]];
  return ways.some((behind) =>
    nearerPlaces(search, i, behind, from).some(({ mode, start }) =>
      attempt(search, [i], behind, () => {
        search.plan.place(i, mode, start);
        return true;
      }),
    ),
  );
}

/** Places nearer to its home that `i` can take while `followers` are out, the nearest first, in modes that cost no more. */
function nearerPlaces(search: Search, i: number, followers: readonly number[], from: Schedule) {
  const { plan, inserter, net } = search;
  const home = homeIn(search, i);
  const off = Math.abs(int(plan.starts, i) - home);
  const { cost } = at(net.modes, int(plan.modes, i));
  const cheap = modesOf(search, i, from).filter((mode) => at(net.modes, mode).cost <= cost);
  return whileOut(search, [i, ...followers], () =>
    cheap
      .map((mode) => ({ mode, start: inserter.firstStart(i, mode, home, home + off - 1) }))
      .filter(({ start }) => start !== NEVER)
      .sort((a, b) => a.start - b.start),
  );
}

/** What `ask` answers while all of `list` is taken out. */
function whileOut<T>(search: Search, list: readonly number[], ask: () => T): T {
  const putAllBack = placesOf(search, list);
  removeAll(search, list);
  const answer = ask();
  putAllBack();
  return answer;
}

/** Takes all out, has `place` put `group` elsewhere, and `followers` behind it; if that is no better, all is where it was. */
function attempt(
  search: Search,
  group: readonly number[],
  followers: readonly number[],
  place: () => boolean,
): boolean {
  const { plan } = search;
  const list = [...group, ...followers];
  const before = costOf(search, list);
  const putAllBack = placesOf(search, list);
  for (const i of list) search.key[i] = int(plan.starts, i);
  removeAll(search, list);
  if (place() && insertAll(search, followers, Infinity, false) && isBetter(costOf(search, list), before))
    if (group.length === 1 || violations(search.net.problem, plan.schedule()).length === 0) return true;
  putAllBack();
  return false;
}

/** The mode of `i` in `from`, or the one it has now if the problem has no such mode any more. */
function modeAtHome({ net, plan }: Search, i: number, from: Schedule): number {
  const first = int(net.modeFirst, i);
  const mode = from.modes[i] ?? -1;
  return mode >= 0 && first + mode < int(net.modeFirst, i + 1) ? first + mode : int(plan.modes, i);
}

/** The open modes of `i`, that which it had at home first. */
function modesOf(search: Search, i: number, from: Schedule): number[] {
  const first = int(search.net.modeFirst, i);
  const all = Array.from({ length: int(search.net.modeFirst, i + 1) - first }, (_, k) => first + k);
  const home = modeAtHome(search, i, from);
  return [home, ...all.filter((m) => m !== home)].filter((m) => search.labels.isOpen(m));
}

/** What touches `group` by a lag, has no home and takes up nothing. */
function followersOf(search: Search, group: readonly number[]): number[] {
  const { net, plan, pinned } = search;
  const near = group.flatMap((i) =>
    at(net.touching, i).flatMap((lag) => [lag.from, lag.to, ...lag.when.map((condition) => condition.activity)]),
  );
  return [...new Set(near)].filter((i) => {
    if (pinned[i] === 1 || homeOf(search, i) !== undefined || group.includes(i)) return false;
    const { uses, presences, slots } = at(net.modes, int(plan.modes, i));
    return uses.length === 0 && presences.length === 0 && slots.duration === 0;
  });
}

/** What of a schedule must not get worse, and what had better get less. */
interface Cost {
  /** By `late` term of the activities asked for. */
  readonly late: readonly number[];
  /** Of the chosen modes: work that another choice would not need. */
  readonly extra: number;
  readonly moved: number;
}

function costOf({ net, plan, costs }: Search, list: readonly number[]): Cost {
  const values = (kind: 'late' | 'moved'): number[] =>
    list.flatMap((i) =>
      at(costs.terms, i).flatMap((term) =>
        term.kind === kind ? [termValue(term, net.problem.from, int(plan.starts, i), int(plan.ends, i))] : [],
      ),
    );
  return {
    late: values('late'),
    extra: list.reduce((sum, i) => sum + at(net.modes, int(plan.modes, i)).cost, 0),
    moved: values('moved').reduce((sum, value) => sum + value, 0),
  };
}

function isBetter(one: Cost, than: Cost): boolean {
  return one.moved < than.moved && one.extra <= than.extra && one.late.every((value, k) => value <= at(than.late, k));
}

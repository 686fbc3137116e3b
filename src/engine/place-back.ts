import { at } from '../at.ts';
import { ALWAYS, NEVER } from '../time/time-map.ts';
import type { Schedule, Term } from './problem.ts';
import { clearWishes, homeOf, insertAll, removeAll, type Search } from './search.ts';
import { int } from './typed.ts';
import { violations } from './valid.ts';
import { termValue } from './value.ts';

/** What of a schedule must not get worse, and what had better get less. */
export interface Standing {
  /** By `late` term: what it costs. */
  readonly late: readonly number[];
  /** Costs of the modes: work that another choice would not need. */
  readonly extra: number;
  /** What all moves cost. */
  readonly moved: number;
}

/**
 * Takes out `group`, and what follows it if `follow`, and has `place` put all of it somewhere else. Answers how all stands
 * then, or undefined if that does not hold or is no better; then all is where it was.
 */
export function attempt(
  search: Search,
  group: readonly number[],
  before: Standing,
  place: (list: readonly number[]) => boolean,
  follow = true,
): Standing | undefined {
  const { plan } = search;
  const list = follow ? [...group, ...followersOf(search, group)] : [...group];
  const starts = list.map((i) => int(plan.starts, i));
  const modes = list.map((i) => int(plan.modes, i));
  for (const [k, i] of list.entries()) {
    search.inserter.preferred[i] = at(modes, k);
    search.key[i] = at(starts, k);
  }
  removeAll(search, list);
  const done = place(list);
  clearWishes(search, list);
  const after = done ? standingOf(search) : undefined;
  if (after !== undefined && isBetter(after, before)) return after;
  removeAll(search, list);
  list.forEach((i, k) => {
    plan.place(i, at(modes, k), at(starts, k));
  });
  return undefined;
}

/** Places `group` at home or as near behind as there is room, in the modes that it had there, strictly so or if it can. */
export function placeNear(
  search: Search,
  list: readonly number[],
  group: readonly number[],
  from: Schedule,
  keepsModes: boolean,
): boolean {
  const { inserter } = search;
  for (const i of group) {
    const home = homeOf(search, i) ?? from.starts[i] ?? ALWAYS;
    inserter.preferred[i] = modeAtHome(search, i, from);
    inserter.wished[i] = home;
    search.key[i] = home;
  }
  inserter.keepsModes = keepsModes;
  const done = insertAll(search, list, Infinity, false);
  inserter.keepsModes = false;
  return done;
}

/** Places all of `group` just as it was at home, whatever the order, and sees whether that holds. */
export function placeHome(search: Search, list: readonly number[], group: readonly number[], from: Schedule): boolean {
  const { plan, net } = search;
  for (const i of group) {
    const m = modeAtHome(search, i, from);
    const home = homeOf(search, i) ?? NEVER;
    if (at(net.modes, m).slots.fit(home) !== home) return false;
    plan.place(i, m, home);
  }
  const followers = list.filter((i) => !plan.isPlaced(i));
  return insertAll(search, followers, Infinity, false) && violations(net.problem, plan.schedule()).length === 0;
}

/** Places `i` at home in `mode`. */
export function placeIn(search: Search, list: readonly number[], i: number, mode: number): boolean {
  const { inserter } = search;
  const home = homeOf(search, i) ?? NEVER;
  inserter.preferred[i] = mode;
  inserter.wished[i] = home;
  search.key[i] = home;
  inserter.keepsModes = true;
  const done = insertAll(search, list, Infinity, false);
  inserter.keepsModes = false;
  return done;
}

function modeAtHome({ net, plan }: Search, i: number, from: Schedule): number {
  const mode = int(net.modeFirst, i) + (from.modes[i] ?? net.modes.length);
  return mode < int(net.modeFirst, i + 1) ? mode : int(plan.modes, i);
}

/** The modes of `i`, that which it had at home first. */
export function modesOf(search: Search, i: number, from: Schedule): number[] {
  const first = int(search.net.modeFirst, i);
  const all = Array.from({ length: int(search.net.modeFirst, i + 1) - first }, (_, k) => first + k);
  const home = modeAtHome(search, i, from);
  return [home, ...all.filter((m) => m !== home && search.labels.isOpen(m))];
}

/** What touches `group` by a lag, has no home and takes up nothing. */
function followersOf(search: Search, group: readonly number[]): number[] {
  const { net, plan, pinned } = search;
  const near = group.flatMap((i) =>
    at(net.touching, i).flatMap((lag) => [lag.from, lag.to, ...lag.when.map((condition) => condition.activity)]),
  );
  return [...new Set(near)].filter((i) => {
    if (pinned[i] === 1 || homeOf(search, i) !== undefined) return false;
    const { uses, presences, slots } = at(net.modes, int(plan.modes, i));
    return uses.length === 0 && presences.length === 0 && slots.duration === 0;
  });
}

export function standingOf(search: Search): Standing {
  const { net, plan } = search;
  const { from, objective } = net.problem;
  const values = (kind: Term['kind']): number[] =>
    objective.flatMap((term) =>
      term.kind === kind ? [termValue(term, from, int(plan.starts, term.activity), int(plan.ends, term.activity))] : [],
    );
  return {
    late: values('late'),
    extra: plan.modes.reduce((sum, m) => sum + at(net.modes, m).cost, 0),
    moved: values('moved').reduce((sum, value) => sum + value, 0),
  };
}

function isBetter(one: Standing, than: Standing): boolean {
  return one.moved < than.moved && one.extra <= than.extra && one.late.every((value, k) => value <= at(than.late, k));
}

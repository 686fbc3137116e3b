import { at } from '../at.ts';
import { freeMembers, homeOf, type Search } from './search.ts';
import { int } from '../typed.ts';
import { DAY_MINUTES } from '../time/span.ts';
import { ALWAYS } from '../time/time-map.ts';

/** Chooses activities to take out, and sets their keys, preferences and wishes. */
type Neighbourhood = (search: Search) => number[];

/** Most activities taken out at once. */
const most = 120;

/** How many minutes apart activities may start that count as next to one another. */
const nearby = 2 * DAY_MINUTES;

/** The ways to choose what to place anew. */
export const neighbourhoods: readonly Neighbourhood[] = [
  wholeComponents(1),
  wholeComponents(2),
  wholeComponents(4),
  onwards(3),
  onwards(8),
  onwards(1000),
  timeSlice,
  sharers,
  homewards,
];

/** Some components, placed anew one after another in random order. */
function wholeComponents(count: number): Neighbourhood {
  return (search) => {
    const list: number[] = [];
    for (const c of componentsLike(search, count)) {
      const members = freeMembers(search, c);
      if (list.length > 0 && list.length + members.length > most) break;
      const first = search.random.unit() * 1e10;
      const noise = search.random.below(4) === 0 ? 0 : search.random.unit() * 2000;
      for (const i of members)
        search.key[i] = first + search.labels.latestStart(i) - search.net.problem.from + noise * search.random.unit();
      list.push(...members);
    }
    varyModes(search, list);
    return list;
  };
}

/** The rest of some components from a minute on, placed anew in much the same order. */
function onwards(count: number): Neighbourhood {
  return (search) => {
    const pivot = search.random.below(search.net.count);
    const from = int(search.plan.starts, pivot);
    const list: number[] = [];
    for (const c of componentsLike(search, count, int(search.structure.componentOf, pivot))) {
      for (const i of freeMembers(search, c)) if (int(search.plan.starts, i) >= from) list.push(i);
      if (list.length > 2 * most) return [];
    }
    list.sort((i, j) => int(search.plan.starts, i) - int(search.plan.starts, j) || i - j);
    keyByStart(search, list);
    return list;
  };
}

/** Everything that starts within some hours or days. */
function timeSlice(search: Search): number[] {
  const { plan, random, net } = search;
  const from = int(plan.starts, random.below(net.count));
  const until = from + 60 + random.below(3 * DAY_MINUTES);
  const list: number[] = [];
  for (let i = 0; i < net.count && list.length < most; i++) {
    const start = int(plan.starts, i);
    if (start >= from && start < until && search.pinned[i] === 0) list.push(i);
  }
  keyByStart(search, list);
  return list;
}

/** An activity and those next to it on one of its resources, each with what follows it. */
function sharers(search: Search): number[] {
  const { plan, random, net } = search;
  const pivot = random.below(net.count);
  const uses = at(net.modes, int(plan.modes, pivot)).uses;
  if (uses.length === 0) return [];
  const resource = at(uses, random.below(uses.length)).resource;
  const near = int(plan.starts, pivot);
  const others: number[] = [];
  for (let i = 0; i < net.count; i++) {
    if (Math.abs(int(plan.starts, i) - near) > nearby || search.pinned[i] === 1) continue;
    if (at(net.modes, int(plan.modes, i)).usesResource.has(resource)) others.push(i);
  }
  others.sort((i, j) => Math.abs(int(plan.starts, i) - near) - Math.abs(int(plan.starts, j) - near) || i - j);
  const list = new Set<number>();
  for (const i of others.slice(0, 3 + random.below(5))) {
    if (list.size > most) break;
    const from = int(plan.starts, i);
    for (const j of freeMembers(search, int(search.structure.componentOf, i)))
      if (int(plan.starts, j) >= from) list.add(j);
  }
  const chosen = [...list];
  keyByStart(search, chosen);
  return chosen;
}

/**
 * Some that had to leave their homes at about the same time, and who took their homes: those back home first, and these in
 * what is left.
 */
function homewards(search: Search): number[] {
  const { plan, random } = search;
  const away = [...search.key.keys()].filter((i) => search.pinned[i] === 0 && isAway(search, i));
  if (away.length === 0) return [];
  const pivot = homeOf(search, at(away, random.below(away.length))) ?? 0;
  const distance = (i: number) => Math.abs((homeOf(search, i) ?? 0) - pivot);
  away.sort((i, j) => distance(i) - distance(j) || i - j);
  const list = new Set(away.slice(0, 1 + random.below(12)));
  const goes = [...list];
  for (const i of goes) {
    const home = homeOf(search, i) ?? 0;
    const slots = at(search.net.modes, int(plan.modes, i)).slots;
    const until = slots.end(home);
    for (let j = 0; j < search.net.count && list.size < most; j++) {
      const meets = int(plan.starts, j) < until && int(plan.ends, j) > home;
      if (meets && search.pinned[j] === 0 && plan.starts[j] !== homeOf(search, j)) list.add(j);
    }
  }
  const chosen = [...list];
  for (const i of chosen) {
    search.key[i] = (homeOf(search, i) ?? int(plan.starts, i)) + (random.below(4) === 0 ? random.unit() * 600 : 0);
    search.inserter.preferred[i] = int(plan.modes, i);
    search.inserter.wished[i] = homeOf(search, i) ?? int(plan.starts, i);
  }
  return chosen;
}

function isAway(search: Search, i: number): boolean {
  const home = homeOf(search, i);
  return home !== undefined && int(search.plan.starts, i) !== home;
}

/** Some components: one at random, and others that run at about the same time. */
function componentsLike(search: Search, count: number, first?: number): number[] {
  const { components } = search.structure;
  const pivot = first ?? search.random.below(components.length);
  if (count >= components.length) return components.map((_, c) => c);
  const chosen = new Set([pivot]);
  for (let tries = 0; chosen.size < count && tries < 3 * count; tries++)
    chosen.add(search.random.below(components.length));
  return [...chosen];
}

/** Keys by present starts, blurred, modes varied. */
function keyByStart(search: Search, list: readonly number[]): void {
  const noise = search.random.below(3) === 0 ? 60 : 60 * (1 + search.random.below(48));
  for (const i of list) search.key[i] = int(search.plan.starts, i) + search.random.unit() * noise;
  varyModes(search, list);
}

/** Keeps some modes as they are and tries some others; lets some activities wish to stay where a term wants them. */
function varyModes(search: Search, list: readonly number[]): void {
  const { net, plan, inserter, random: numbers } = search;
  const keepShare = numbers.below(3) * 0.4;
  const flipShare = numbers.below(2) * 0.1;
  const wishing = numbers.below(2) === 0;
  for (const i of list) {
    const first = int(net.modeFirst, i);
    const count = int(net.modeFirst, i + 1) - first;
    const chance = count === 1 ? 1 : numbers.unit();
    if (chance < flipShare) inserter.preferred[i] = first + numbers.below(count);
    else if (chance < flipShare + keepShare) inserter.preferred[i] = int(plan.modes, i);
    if (!wishing) continue;
    inserter.wished[i] = homeOf(search, i) ?? ALWAYS;
  }
}

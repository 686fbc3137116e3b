import { int } from '../../typed.ts';
import type { Build } from './build.ts';
import { createLesson } from './lesson.ts';
import type { Lesson } from './lesson.ts';
import { createLinks, followLinks } from './links.ts';
import type { Links } from './links.ts';
import type { Model } from './model.ts';
import { createOrder, nextCut, noticeTaken, openOrderLevel, undoOrderTo } from './order.ts';
import type { Order } from './order.ts';
import { followProfile } from './profile-moves.ts';
import { createProfile, noticeRise, openProfileLevel, settleProfileRoot, undoProfileTo } from './profile.ts';
import type { Profile } from './profile.ts';
import { followClauses } from './clauses.ts';
import { BOUND, CHOSEN, createStore, openLevel, raise, settleRoot, TRAIL_WIDTH, undoTo } from './store.ts';
import type { Store } from './store.ts';
import { followSum } from './sum.ts';
import type { Sum } from './sum.ts';

/** A learning search over the starts of a model, and the 0/1 variables that order pairs which cannot overlap. */
export interface Solver {
  readonly model: Model;
  readonly store: Store;
  readonly links: Links;
  readonly profile: Profile;
  readonly order: Order;
  readonly lesson: Lesson;
  readonly sum: Sum | undefined;
  /** Variable whose lower end is to be minimised; the objective is `scale` times it. */
  readonly cost: number;
  readonly scale: number;
  /** Value of each variable that the search tries first. */
  readonly guide: Int32Array;
  /** False once the last rise made lower and upper bound cross. */
  consistent: boolean;
  /** False once nothing can satisfy what holds at level 0. */
  possible: boolean;
  choices: number;
  conflicts: number;
  /** Rises worked off: a measure of effort that is the same on every machine. */
  work: number;
}

export function createSolver(build: Build): Solver {
  const { model, lowest, highest } = build;
  const store = createStore(lowest, highest);
  let periods = 1;
  for (let i = 0; i < model.activities; i++) periods = Math.max(periods, int(highest, i) + int(model.duration, i) + 1);
  const solver: Solver = {
    model,
    store,
    links: createLinks(lowest.length, build.links),
    profile: createProfile(model, periods),
    order: createOrder(store),
    lesson: createLesson(store.value.length),
    sum: build.sum,
    cost: build.cost,
    scale: build.scale,
    guide: lowest.slice(),
    consistent: true,
    possible: lowest.every((low, x) => low <= int(highest, x)),
    choices: 0,
    conflicts: 0,
    work: 0,
  };
  for (let bound = 0; bound < store.value.length && solver.possible; bound++) {
    noticeRiseOf(solver, bound);
    solver.possible = followLinks(store, solver.links, bound);
  }
  settle(solver);
  return solver;
}

function noticeRiseOf(solver: Solver, bound: number): void {
  if (bound < 2 * solver.profile.activities) noticeRise(solver.profile, bound);
}

/** Draws every conclusion from what holds; false on a conflict. */
export function propagate(solver: Solver): boolean {
  const { store: s, links, profile } = solver;
  if (!solver.consistent) return false;
  links.rises.fill(0);
  for (;;) {
    while (s.head < s.trailSize) {
      const bound = int(s.trail, s.head * TRAIL_WIDTH + BOUND);
      s.head += 1;
      const old = int(s.followed, bound);
      const now = int(s.value, bound);
      if (now <= old) continue;
      s.followed[bound] = now;
      solver.work += 1;
      noticeRiseOf(solver, bound);
      if (!followClauses(s, bound, old, now) || !followLinks(s, links, bound)) return false;
    }
    if (solver.sum !== undefined && !followSum(s, solver.sum)) return false;
    if (profile.waitingSize > 0 && !followProfile(s, profile)) return false;
    if (s.head === s.trailSize) return true;
  }
}

/** Propagates at level 0 and keeps the result for good. */
export function settle(solver: Solver): void {
  if (!solver.possible) return;
  solver.possible = propagate(solver);
  if (!solver.possible) return;
  settleRoot(solver.store);
  settleProfileRoot(solver.profile);
}

export function goBackTo(solver: Solver, level: number): void {
  if (level >= solver.store.level) return;
  undoTo(solver.store, level);
  undoProfileTo(solver.profile, level);
  undoOrderTo(solver.order, level);
  solver.consistent = true;
}

/** Opens a level and takes the fact (bound, value) as true. */
export function choose(solver: Solver, bound: number, value: number): void {
  openLevel(solver.store);
  openProfileLevel(solver.profile, solver.store.level);
  openOrderLevel(solver.order, solver.store.level);
  solver.consistent = raise(solver.store, bound, value, CHOSEN, 0, 0);
  solver.choices += 1;
}

/** Holds a fact at level 0 from now on. */
export function assertFact(solver: Solver, bound: number, value: number): void {
  goBackTo(solver, 0);
  if (!solver.possible) return;
  solver.possible = raise(solver.store, bound, value, CHOSEN, 0, 0);
  settle(solver);
}

/** Chooses the next cut by activity, on the side of the guide; false if none is open. */
export function chooseActiveCut(solver: Solver): boolean {
  const { store: s, order, guide } = solver;
  const cut = nextCut(order, s);
  if (cut < 0) return false;
  const x = int(order.owner, cut);
  const value = cut - int(s.cutOffset, x);
  if (int(guide, x) <= value) choose(solver, 2 * x + 1, -value);
  else choose(solver, 2 * x, value + 1);
  noticeTaken(order, cut);
  return true;
}

/** Chooses the open activity that can start first (then: the one with least room) to start then; false if none. */
export function chooseEarliest(solver: Solver): boolean {
  const { value } = solver.store;
  let best = -1;
  let bestStart = 0;
  let bestLatest = 0;
  for (let i = 0; i < solver.model.activities; i++) {
    const start = int(value, 2 * i);
    const latest = -int(value, 2 * i + 1);
    if (start === latest) continue;
    if (best >= 0 && (start > bestStart || (start === bestStart && latest >= bestLatest))) continue;
    best = i;
    bestStart = start;
    bestLatest = latest;
  }
  if (best < 0) return false;
  choose(solver, 2 * best + 1, -bestStart);
  return true;
}

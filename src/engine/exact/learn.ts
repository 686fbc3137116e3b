import { int } from '../../typed.ts';
import { explain } from './explain.ts';
import { roomFor } from './ints.ts';
import { bumpCut } from './order.ts';
import type { Solver } from './solver.ts';
import { goBackTo } from './solver.ts';
import { addClause } from './clauses.ts';
import { BOUND, BY_CLAUSE, CHOSEN, cutOf, LEVEL, placeOf, raise, REASON, TRAIL_WIDTH } from './store.ts';
import type { Store } from './store.ts';

const NO = 0;
const NEEDED = 1;
const WAS_NEEDED = 2;
const DEEPEST_PROOF = 12;

/** How much less a conflict weighs than the next one. */
const DECAY = 0.95;

/** Learns from the conflict just found and goes back to where that matters. */
export function resolveConflict(solver: Solver): void {
  solver.conflicts += 1;
  solver.store.clauses.clock += 1;
  solver.order.bump /= DECAY;
  if (!learn(solver)) solver.possible = false;
}

/**
 * Learns a clause from `conflict`: goes back to where it first forces something, and forces it. False if the conflict
 * holds at level 0, so that there is nothing left to find.
 */
function learn(solver: Solver): boolean {
  const { store: s, lesson: l } = solver;
  goBackTo(solver, conflictLevel(s));
  if (s.level === 0) return false;
  l.involvedSize = 0;
  l.onLastLevel = 0;
  for (let k = 0; k < s.conflictSize; k += 2) need(solver, int(s.conflict, k), int(s.conflict, k + 1));
  let place = s.trailSize;
  let bound = -1;
  for (;;) {
    do {
      place -= 1;
      bound = int(s.trail, place * TRAIL_WIDTH + BOUND);
    } while (int(l.isNeeded, bound) !== NEEDED || int(l.where, bound) !== place);
    if (l.onLastLevel === 1 && !crosses(s, place, bound)) break;

    l.isNeeded[bound] = WAS_NEEDED;
    l.onLastLevel -= 1;
    s.conflictSize = 0;
    explain(s, solver.links, solver.profile, place, int(l.needed, bound));
    for (let k = 0; k < s.conflictSize; k += 2) need(solver, int(s.conflict, k), int(s.conflict, k + 1));
  }
  const size = writeLesson(solver, bound);
  for (let k = 0; k < l.involvedSize; k++) l.isNeeded[int(l.involved, k)] = NO;
  conclude(solver, size);
  return true;
}

/** Is this the rise past the opposite bound? It cannot be what the clause forces: that holds already. */
function crosses(s: Store, place: number, bound: number): boolean {
  return place === s.trailSize - 1 && int(s.value, bound) + int(s.value, bound ^ 1) > 0;
}

function conflictLevel(s: Store): number {
  let highest = 0;
  for (let k = 0; k < s.conflictSize; k += 2) {
    const place = placeOf(s, int(s.conflict, k), int(s.conflict, k + 1));
    if (place >= 0) highest = Math.max(highest, int(s.trail, place * TRAIL_WIDTH + LEVEL));
  }
  return highest;
}

function need(solver: Solver, bound: number, value: number): void {
  const { store: s, lesson: l } = solver;
  if (int(s.root, bound) >= value) return;
  const start = int(s.levelStart, s.level);
  const state = int(l.isNeeded, bound);
  if (state === NEEDED) {
    if (value <= int(l.needed, bound)) return;
    if (int(l.where, bound) >= start) l.onLastLevel -= 1;
  } else {
    l.isNeeded[bound] = NEEDED;
    if (state === NO) {
      l.involved[l.involvedSize] = bound;
      l.involvedSize += 1;
    }
  }
  if (value + int(s.root, bound ^ 1) <= 0) bumpCut(solver.order, cutOf(s, bound, value));
  const place = placeOf(s, bound, value);
  l.needed[bound] = value;
  l.where[bound] = place;
  if (place >= start) l.onLastLevel += 1;
}

/** Writes the clause to `facts`, what it forces first, then the fact that became true last; returns its size. */
function writeLesson(solver: Solver, forced: number): number {
  const { store: s, lesson: l } = solver;
  l.facts[0] = forced ^ 1;
  l.facts[1] = 1 - int(l.needed, forced);
  let size = 1;
  let last = -1;
  for (let k = 0; k < l.involvedSize; k++) {
    const bound = int(l.involved, k);
    if (bound === forced || int(l.isNeeded, bound) !== NEEDED) continue;
    s.conflictSize = 0;
    if (followsFromNeeded(solver, int(l.where, bound), int(l.needed, bound), DEEPEST_PROOF)) continue;
    l.facts[2 * size] = bound ^ 1;
    l.facts[2 * size + 1] = 1 - int(l.needed, bound);
    if (int(l.where, bound) > last) {
      last = int(l.where, bound);
      swapFacts(l.facts, 1, size);
    }
    size += 1;
  }
  return size;
}

function swapFacts(facts: Int32Array, a: number, b: number): void {
  for (let k = 0; k < 2; k++) {
    const kept = int(facts, 2 * a + k);
    facts[2 * a + k] = int(facts, 2 * b + k);
    facts[2 * b + k] = kept;
  }
}

/**
 * Does the rise at `place` to `value` follow from needed facts that became true before it? Their being earlier keeps
 * two facts from standing in for each other.
 */
function followsFromNeeded(solver: Solver, place: number, value: number, depth: number): boolean {
  const { store: s, lesson: l } = solver;
  if (depth === 0 || int(s.trail, place * TRAIL_WIDTH + REASON) === CHOSEN) return false;
  const begin = s.conflictSize;
  explain(s, solver.links, solver.profile, place, value);
  const end = s.conflictSize;
  let follows = true;
  for (let k = begin; k < end && follows; k += 2) {
    const bound = int(s.conflict, k);
    const least = int(s.conflict, k + 1);
    if (int(s.root, bound) >= least) continue;
    const given = int(l.isNeeded, bound) === NEEDED && int(l.needed, bound) >= least && int(l.where, bound) < place;
    if (!given) follows = followsFromNeeded(solver, placeOf(s, bound, least), least, depth - 1);
  }
  s.conflictSize = begin;
  return follows;
}

function conclude(solver: Solver, size: number): void {
  const { store: s, lesson: l } = solver;
  if (size === 1) {
    goBackTo(solver, 0);
    solver.consistent = raise(s, int(l.facts, 0), int(l.facts, 1), CHOSEN, 0, 0);
    return;
  }
  const second = placeOf(s, int(l.facts, 2) ^ 1, 1 - int(l.facts, 3));
  const level = int(s.trail, second * TRAIL_WIDTH + LEVEL);
  const spread = countLevels(solver, size);
  goBackTo(solver, level);
  const begin = addClause(s, l.facts, size, spread);
  solver.consistent = raise(s, int(l.facts, 0), int(l.facts, 1), BY_CLAUSE, begin, 0);
}

function countLevels(solver: Solver, size: number): number {
  const { store: s, lesson: l } = solver;
  l.levelStamp = roomFor(l.levelStamp, s.level + 1);
  l.stamp += 1;
  let count = 1;
  for (let k = 1; k < size; k++) {
    const place = placeOf(s, int(l.facts, 2 * k) ^ 1, 1 - int(l.facts, 2 * k + 1));
    const level = int(s.trail, place * TRAIL_WIDTH + LEVEL);
    if (int(l.levelStamp, level) === l.stamp) continue;
    l.levelStamp[level] = l.stamp;
    count += 1;
  }
  return count;
}

import { int } from '../typed.ts';
import { groupBy } from './ints.ts';
import type { Rows } from './ints.ts';
import { addConflict, BY_ARC, BY_GUARD, DETAIL, placeOf, raise, REASON, TRAIL_WIDTH } from './store.ts';
import type { Store } from './store.ts';

/**
 * Arcs between bounds: `value of target >= value of source + weight`, always or once the guard holds. The guard is a
 * bound of a 0/1 variable: it holds once that variable has taken the side the bound stands for.
 */
export interface Links {
  /** bySource[b]: the arcs out of bound b. */
  readonly bySource: Rows;
  readonly byGuard: Rows;
  readonly source: Int32Array;
  readonly target: Int32Array;
  readonly weight: Int32Array;
  readonly guard: Int32Array;
  /** How often each bound rose along arcs since the last choice. */
  readonly rises: Int32Array;
}

export const NO_GUARD = -1;
/** Rises of one bound after which a cycle is looked for, and again after as many. */
const RISES_TO_CHECK = 6;

/** An arc between variables: x[to] >= x[from] + weight if `guard` holds. */
export interface Link {
  readonly from: number;
  readonly to: number;
  readonly weight: number;
  readonly guard: number;
}

export function createLinks(variables: number, list: readonly Link[]): Links {
  const source: number[] = [];
  const target: number[] = [];
  const weight: number[] = [];
  const guard: number[] = [];
  for (const link of list) {
    source.push(2 * link.from, 2 * link.to + 1);
    target.push(2 * link.to, 2 * link.from + 1);
    weight.push(link.weight, link.weight);
    guard.push(link.guard, link.guard);
  }
  const bounds = 2 * variables;
  // Arcs without a guard go to an extra, last row.
  const guardRow = Int32Array.from(guard, (g) => (g === NO_GUARD ? bounds : g));
  return {
    bySource: groupBy(Int32Array.from(source), bounds),
    byGuard: groupBy(guardRow, bounds + 1),
    source: Int32Array.from(source),
    target: Int32Array.from(target),
    weight: Int32Array.from(weight),
    guard: Int32Array.from(guard),
    rises: new Int32Array(bounds),
  };
}

/** Value a guard bound has once it holds: 1 for "variable is 1", 0 for "variable is 0". */
export function guardValue(guard: number): number {
  return 1 - (guard & 1);
}

/** Works off the arcs out of `bound`, and those `bound` guards. */
export function followLinks(s: Store, links: Links, bound: number): boolean {
  const { first, items } = links.bySource;
  const end = int(first, bound + 1);
  for (let k = int(first, bound); k < end; k++) if (!followArc(s, links, int(items, k), bound)) return false;
  const guarded = links.byGuard;
  const guardedEnd = int(guarded.first, bound + 1);
  for (let k = int(guarded.first, bound); k < guardedEnd; k++) {
    const arc = int(guarded.items, k);
    if (!followArc(s, links, arc, int(links.source, arc))) return false;
  }
  return true;
}

function followArc(s: Store, links: Links, arc: number, source: number): boolean {
  const { value } = s;
  const target = int(links.target, arc);
  const weight = int(links.weight, arc);
  const from = int(value, source);
  const guard = int(links.guard, arc);
  if (guard !== NO_GUARD && int(value, guard) < guardValue(guard)) {
    const opposite = int(value, target ^ 1);
    if (from + weight + opposite <= 0) return true;
    // Raised already if the guard is false: then nothing happens.
    return raise(s, guard ^ 1, 1 - guardValue(guard), BY_GUARD, arc, 1 - weight - opposite);
  }
  const least = from + weight;
  if (least <= int(value, target)) return true;
  if (!raise(s, target, least, BY_ARC, arc, 0)) return false;
  const rises = int(links.rises, target) + 1;
  links.rises[target] = rises;
  return rises % RISES_TO_CHECK !== 0 || !closesCycle(s, links, target);
}

/** Did `bound` raise itself, over arcs alone? Then their guards are the conflict. */
function closesCycle(s: Store, links: Links, bound: number): boolean {
  let at = bound;
  let value = int(s.value, bound);
  s.conflictSize = 0;
  do {
    const place = placeOf(s, at, value);
    if (place < 0 || int(s.trail, place * TRAIL_WIDTH + REASON) !== BY_ARC) return false;
    const arc = int(s.trail, place * TRAIL_WIDTH + DETAIL);
    const guard = int(links.guard, arc);
    if (guard !== NO_GUARD) addConflict(s, guard, guardValue(guard));
    value -= int(links.weight, arc);
    at = int(links.source, arc);
  } while (at !== bound);
  return true;
}

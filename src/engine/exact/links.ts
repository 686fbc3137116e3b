import { at } from '../../at.ts';
import { int } from '../../typed.ts';
import { groupBy } from './ints.ts';
import type { Rows } from './ints.ts';
import { addConflict, BY_ARC, BY_GUARD, DETAIL, placeOf, raise, REASON, TRAIL_WIDTH } from './store.ts';
import type { Store } from './store.ts';

/**
 * Arcs between bounds: `value of target >= value of source + weight`, always or once the guard holds. The guard is a
 * bound of a 0/1 variable: it holds once that variable has taken the side the bound stands for.
 */
export interface Links {
  /** Arcs out of bound b: numbers first[b] .. first[b + 1] - 1. */
  readonly first: Int32Array;
  /** LINK_WIDTH numbers for each arc: target, weight, guard, source. */
  readonly text: Int32Array;
  readonly byGuard: Rows;
  /** How often each bound rose along arcs since the last choice. */
  readonly rises: Int32Array;
}

const LINK_WIDTH = 4;
const TARGET = 0;
const WEIGHT = 1;
const GUARD = 2;
const SOURCE = 3;
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
  const bounds = 2 * variables;
  const both = [
    ...list.map(({ from, to, weight, guard }) => ({ source: 2 * from, target: 2 * to, weight, guard })),
    ...list.map(({ from, to, weight, guard }) => ({ source: 2 * to + 1, target: 2 * from + 1, weight, guard })),
  ];
  const rows = groupBy(
    Int32Array.from(both, (arc) => arc.source),
    bounds,
  );
  const text = new Int32Array(LINK_WIDTH * both.length);
  const guards = new Int32Array(both.length);
  rows.items.forEach((item, arc) => {
    const { source, target, weight, guard } = at(both, item);
    text.set([target, weight, guard, source], LINK_WIDTH * arc);
    // Arcs without a guard go to an extra, last row.
    guards[arc] = guard === NO_GUARD ? bounds : guard;
  });
  return { first: rows.first, text, byGuard: groupBy(guards, bounds + 1), rises: new Int32Array(bounds) };
}

export function targetOf(links: Links, arc: number): number {
  return int(links.text, LINK_WIDTH * arc + TARGET);
}

export function weightOf(links: Links, arc: number): number {
  return int(links.text, LINK_WIDTH * arc + WEIGHT);
}

export function guardOf(links: Links, arc: number): number {
  return int(links.text, LINK_WIDTH * arc + GUARD);
}

export function sourceOf(links: Links, arc: number): number {
  return int(links.text, LINK_WIDTH * arc + SOURCE);
}

/** Value a guard bound has once it holds: 1 for "variable is 1", 0 for "variable is 0". */
export function guardValue(guard: number): number {
  return 1 - (guard & 1);
}

/** Works off the arcs out of `bound`, and those `bound` guards. */
export function followLinks(s: Store, links: Links, bound: number): boolean {
  const { first, byGuard } = links;
  const end = int(first, bound + 1);
  for (let arc = int(first, bound); arc < end; arc++) if (!followArc(s, links, arc, bound)) return false;
  const guardedEnd = int(byGuard.first, bound + 1);
  for (let k = int(byGuard.first, bound); k < guardedEnd; k++) {
    const arc = int(byGuard.items, k);
    if (!followArc(s, links, arc, sourceOf(links, arc))) return false;
  }
  return true;
}

function followArc(s: Store, links: Links, arc: number, source: number): boolean {
  const { value } = s;
  const { text } = links;
  const place = LINK_WIDTH * arc;
  const target = int(text, place + TARGET);
  const weight = int(text, place + WEIGHT);
  const guard = int(text, place + GUARD);
  const from = int(value, source);
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
  let reached = bound;
  let value = int(s.value, bound);
  s.conflictSize = 0;
  do {
    const place = placeOf(s, reached, value);
    if (place < 0 || int(s.trail, place * TRAIL_WIDTH + REASON) !== BY_ARC) return false;
    const arc = int(s.trail, place * TRAIL_WIDTH + DETAIL);
    const guard = guardOf(links, arc);
    if (guard !== NO_GUARD) addConflict(s, guard, guardValue(guard));
    value -= weightOf(links, arc);
    reached = sourceOf(links, arc);
  } while (reached !== bound);
  return true;
}

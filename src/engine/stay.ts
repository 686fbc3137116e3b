import { at } from '../at.ts';
import { emptyPlan, placeFirst, wishFor } from './construct.ts';
import { placingOrder } from './order.ts';
import type { Schedule } from './problem.ts';
import { clearWishes, freeMembers, homeOf, insertAll, type Search } from './search.ts';
import { int } from '../typed.ts';

/** How often what has to move may take more along with it. */
const rounds = 40;

/** What of it all comes before what stays. */
interface First {
  /** All else that starts within so many minutes from the first that cannot stay gives way. */
  readonly spare?: number;
  /** Components that are placed anew before anything else stays, one after another. */
  readonly components?: readonly number[];
}

/**
 * Places everything where `from` has it, and what cannot stay there, or comes `first`, anew. Answers what was placed
 * anew, or undefined if that found no place however much was taken along.
 */
export function constructStaying(
  search: Search,
  from: Schedule,
  { spare = 0, components = [] }: First,
): number[] | undefined {
  const everything = Array.from({ length: search.net.count }, (_, i) => i);
  wishFor(search, everything, from);
  const order = placingOrder(search.structure, everything, search.key, false);
  const loose = new Uint8Array(search.net.count);
  const begin = (): boolean => {
    emptyPlan(search);
    return components.length === 0 || placeFirst(search, components);
  };
  const ahead = components.flatMap((c) => freeMembers(search, c));
  for (const i of ahead) loose[i] = 1;
  if (!begin()) {
    clearWishes(search, everything);
    return undefined;
  }
  placeStaying(search, order, loose);
  if (spare > 0) loosenFor(search, spare, loose);
  let done = false;
  for (let round = 0; round < rounds && !done; round++) {
    if (round > 0 || spare > 0) {
      if (!begin()) break;
      placeStaying(search, order, loose);
    }
    const rest = chosen(loose).filter((i) => !search.plan.isPlaced(i));
    done = insertAll(search, rest, Infinity, false);
    if (!done && !widen(search, search.inserter.failed, loose)) break;
  }
  clearWishes(search, everything);
  return done ? chosen(loose) : undefined;
}

function chosen(loose: Uint8Array): number[] {
  return [...loose.keys()].filter((i) => loose[i] === 1);
}

/** Places in `order` what is not loose and can stay; what cannot gets loose. */
function placeStaying(search: Search, order: readonly number[], loose: Uint8Array): void {
  const { inserter, plan } = search;
  for (const i of order) {
    if (loose[i] === 1 || plan.isPlaced(i)) continue;
    if (mayStay(search, i) && inserter.insert([i], Infinity) && hasStayed(search, i)) continue;
    if (plan.isPlaced(i)) plan.remove(i);
    loose[i] = 1;
  }
}

/** What takes up resources and has no home comes after all that has. */
function mayStay(search: Search, i: number): boolean {
  if (search.pinned[i] === 1 || homeOf(search, i) !== undefined) return true;
  const preferred = int(search.inserter.preferred, i);
  return preferred >= 0 && at(search.net.modes, preferred).uses.length === 0;
}

function hasStayed(search: Search, i: number): boolean {
  const home = homeOf(search, i);
  if (home !== undefined) return int(search.plan.starts, i) === home;
  return search.pinned[i] === 1 || int(search.plan.modes, i) === int(search.inserter.preferred, i);
}

function loosenFor(search: Search, spare: number, loose: Uint8Array): void {
  const first = Math.min(...chosen(loose).map((i) => homeOf(search, i) ?? Infinity));
  for (let i = 0; i < loose.length; i++) {
    const home = homeOf(search, i) ?? -Infinity;
    if (search.pinned[i] !== 1 && home >= first && home < first + spare) loose[i] = 1;
  }
}

/** Loosens what has to come after `failed`, else what it is tied to, else all of its component; false if all is loose. */
function widen(search: Search, failed: number, loose: Uint8Array): boolean {
  const { after, blockOf, componentOf } = search.structure;
  const own = freeMembers(search, int(componentOf, failed)).filter((i) => loose[i] === 0);
  const next = at(after, failed).filter((i) => loose[i] === 0 && search.pinned[i] !== 1);
  const tied = own.filter((i) => int(blockOf, i) === int(blockOf, failed));
  for (const i of [next, tied, own].find((list) => list.length > 0) ?? []) loose[i] = 1;
  return own.length > 0;
}

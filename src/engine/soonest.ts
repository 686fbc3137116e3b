import { Labels } from './labels.ts';
import { netOf } from './net.ts';
import type { Problem, Schedule } from './problem.ts';
import { clearWishes, insertAll, removeAll, type Search, searchOf } from './search.ts';
import { wishFor } from './construct.ts';
import { int } from '../typed.ts';

/** Puts what can lie nowhere else there, without asking whether it fits: it did before, and nothing else has a place yet. */
function placePinned({ net, labels, plan, pinned }: Search, list: readonly number[]): void {
  for (const i of list) {
    if (pinned[i] === 0) continue;
    for (let m = int(net.modeFirst, i); m < int(net.modeFirst, i + 1); m += 1)
      if (labels.isOpen(m)) plan.place(i, m, labels.earliestStart(i));
  }
}

/** A search in which `from` is wished for all but `free`, and what can lie nowhere else has its place; undefined where nothing holds. */
export function searchNear(problem: Problem, from: Schedule, free: readonly number[]): Search | undefined {
  const net = netOf(problem);
  const all = Array.from({ length: net.count }, (_, i) => i);
  // Until when each must have begun, what stays says: the way back through all lags would cost as much as all else.
  const labels = new Labels(net, 'earliest');
  if (!labels.propagate()) return undefined;
  const search = searchOf(net, labels, 0);
  wishFor(search, all, from);
  clearWishes(search, free);
  placePinned(
    search,
    all.filter((i) => !free.includes(i)),
  );
  return search;
}

/** Those that have no place yet. */
export function unplaced({ net, plan }: Search): number[] {
  return Array.from({ length: net.count }, (_, i) => i).filter((i) => !plan.isPlaced(i));
}

/**
 * Everything placed where `from` has it, or as near as it can be, but `free` in turn as soon as each can start; undefined
 * where that finds no place. What can lie nowhere else must hold where `from` has it. Greedy: what it answers holds then, and a
 * better answer may exist.
 */
export function soonest(problem: Problem, from: Schedule, free: readonly number[]): Schedule | undefined {
  const search = searchNear(problem, from, free);
  if (search === undefined) return undefined;
  const place = (list: readonly number[]) => insertAll(search, list, Infinity, false);
  // What stays says what those that move have to keep to; else all is tried in the order of its starts.
  const movable = unplaced(search);
  const loose = movable.filter((i) => !free.includes(i));
  const again = () => {
    removeAll(search, movable);
    return place(movable);
  };
  const found = (place(loose) && place(unplaced(search))) || (loose.length > 0 && again());
  return found ? search.plan.schedule() : undefined;
}

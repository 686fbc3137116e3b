import { Labels } from './labels.ts';
import { netOf } from './net.ts';
import type { Problem, Schedule } from './problem.ts';
import { clearWishes, insertAll, searchOf } from './search.ts';
import { emptyPlan, placeFirst, wishFor } from './construct.ts';

/**
 * Everything placed where `from` has it, or as near as it can be, but `free` in turn as soon as each can start; undefined
 * where that finds no place. Greedy: what it answers holds, and a better answer may exist.
 */
export function soonest(problem: Problem, from: Schedule, free: readonly number[]): Schedule | undefined {
  const net = netOf(problem);
  const all = Array.from({ length: net.count }, (_, i) => i);
  const stays = all.filter((i) => !free.includes(i));
  const placed = (bounds: 'both' | 'earliest', orders: readonly (readonly number[])[]): Schedule | undefined => {
    const labels = new Labels(net, bounds);
    if (!labels.propagate()) return undefined;
    const search = searchOf(net, labels, 0);
    wishFor(search, all, from);
    clearWishes(search, free);
    const left = () => all.filter((i) => !search.plan.isPlaced(i));
    const place = (list: readonly number[]) => insertAll(search, list, Infinity, false);
    const found = orders.some((first) => {
      emptyPlan(search);
      return placeFirst(search, []) && place(left().filter((i) => first.includes(i))) && place(left());
    });
    return found ? search.plan.schedule() : undefined;
  };
  // What stays says what those that move have to keep to; else all is tried in the order of its starts.
  return placed('earliest', [stays]) ?? placed('both', [stays, []]);
}

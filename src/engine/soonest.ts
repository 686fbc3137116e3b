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
  const labels = new Labels(netOf(problem));
  if (!labels.propagate()) return undefined;
  const search = searchOf(labels.net, labels, 0);
  const all = Array.from({ length: labels.net.count }, (_, i) => i);
  wishFor(search, all, from);
  clearWishes(search, free);
  const place = (first: readonly number[]): boolean => {
    emptyPlan(search);
    const left = () => all.filter((i) => !search.plan.isPlaced(i));
    return (
      placeFirst(search, []) &&
      insertAll(
        search,
        left().filter((i) => first.includes(i)),
        Infinity,
        false,
      ) &&
      insertAll(search, left(), Infinity, false)
    );
  };
  // What stays says what those that move have to keep to; else all is tried in the order of its starts.
  const stays = all.filter((i) => !free.includes(i));
  return place(stays) || place([]) ? search.plan.schedule() : undefined;
}

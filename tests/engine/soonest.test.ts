import { expect, test } from 'vitest';
import { emptyPlan, wishFor } from '../../src/engine/construct.ts';
import { Labels } from '../../src/engine/labels.ts';
import { netOf } from '../../src/engine/net.ts';
import { clearWishes, insertAll, searchOf } from '../../src/engine/search.ts';
import { soonest } from '../../src/engine/soonest.ts';
import type { Problem, Schedule } from '../../src/engine/problem.ts';
import { violations } from '../../src/engine/valid.ts';
import { intersect } from '../../src/time/span.ts';
import fc from '../support/property.ts';
import { bruteForce } from './brute-force.ts';
import { smallProblems } from './small-problems.ts';

/** The problem in which activity `k` begins at `last` at the latest. */
function upTo(problem: Problem, k: number, last: number): Problem {
  const early = [{ start: problem.from, end: last + 1 }];
  const activities = problem.activities.map((activity, i) =>
    i === k
      ? { ...activity, modes: activity.modes.map((m) => ({ ...m, starts: intersect(m.starts ?? early, early) })) }
      : activity,
  );
  return { ...problem, activities };
}

/** The problem in which activity `k` begins just at `start`. */
function at(problem: Problem, k: number, start: number): Problem {
  const just = [{ start, end: start + 1 }];
  const activities = problem.activities.map((activity, i) =>
    i === k
      ? { ...activity, modes: activity.modes.map((m) => ({ ...m, starts: intersect(m.starts ?? just, just) })) }
      : activity,
  );
  return { ...problem, activities };
}

test('what is found holds, and is no later than where it was', () => {
  const seen = { found: 0, sooner: 0 };
  fc.assert(
    fc.property(smallProblems({ activities: 4, minutes: 8 }), fc.nat(3), (problem, any) => {
      const k = any % problem.activities.length;
      const from = bruteForce({ ...problem, objective: [] })?.schedule;
      const found = from && soonest(upTo(problem, k, from.starts[k] ?? NaN), from, [k]);
      if (from === undefined || found === undefined) return;
      expect(violations(problem, found)).toEqual([]);
      expect(found.starts[k]).toBeLessThanOrEqual(from.starts[k] ?? NaN);
      seen.found += 1;
      if (found.starts[k] !== from.starts[k]) seen.sooner += 1;
    }),
    { numRuns: 600 },
  );
  expect(Math.min(seen.found / 5, seen.sooner)).toBeGreaterThan(5);
});

/** The same in full: what stays first, and where that finds no place, all taken out and everything tried in turn. */
function inFull(problem: Problem, from: Schedule, free: readonly number[]): Schedule | undefined {
  const net = netOf(problem);
  const all = Array.from({ length: net.count }, (_, i) => i);
  const stays = all.filter((i) => !free.includes(i));
  const labels = new Labels(net, 'earliest');
  if (!labels.propagate()) return undefined;
  const search = searchOf(net, labels, 0);
  wishFor(search, all, from);
  clearWishes(search, free);
  const left = (of: readonly number[]) => of.filter((i) => !search.plan.isPlaced(i));
  const found = [stays, []].some((first: readonly number[]) => {
    emptyPlan(search);
    for (const i of stays)
      for (let m = net.modeFirst[i]!; m < net.modeFirst[i + 1]!; m += 1)
        if (search.pinned[i] === 1 && labels.isOpen(m)) search.plan.place(i, m, labels.earliestStart(i));
    return insertAll(search, left(first), Infinity, false) && insertAll(search, left(all), Infinity, false);
  });
  return found ? search.plan.schedule() : undefined;
}

test('nothing is found otherwise than by trying again from an empty plan', () => {
  const seen = { found: 0, none: 0 };
  fc.assert(
    fc.property(smallProblems({ activities: 5, minutes: 8 }), fc.nat(4), fc.nat(4), (problem, any, sooner) => {
      const k = any % problem.activities.length;
      const from = bruteForce({ ...problem, objective: [] })?.schedule;
      if (from === undefined) return;
      // All but it and one more may lie nowhere else.
      const pinned = problem.activities.reduce(
        (some, _, i) =>
          i === k || i === (k + 1) % problem.activities.length ? some : at(some, i, from.starts[i] ?? 0),
        problem,
      );
      const asked = upTo(pinned, k, (from.starts[k] ?? 0) - sooner);
      const found = soonest(asked, from, [k]);
      expect(found).toEqual(inFull(asked, from, [k]));
      seen[found === undefined ? 'none' : 'found'] += 1;
    }),
    { numRuns: 600 },
  );
  expect(Math.min(seen.found, seen.none)).toBeGreaterThan(20);
});

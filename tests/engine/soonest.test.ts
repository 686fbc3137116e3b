import { expect, test } from 'vitest';
import { insertAll } from '../../src/engine/search.ts';
import { searchNear, soonest, unplaced } from '../../src/engine/soonest.ts';
import type { Problem, Schedule } from '../../src/engine/problem.ts';
import { violations } from '../../src/engine/valid.ts';
import { intersect } from '../../src/time/span.ts';
import fc from '../support/property.ts';
import { bruteForce } from './brute-force.ts';
import { smallProblems } from './small-problems.ts';

/** The problem in which activity `k` begins from `first` to `last`. */
function within(problem: Problem, k: number, first: number, last: number): Problem {
  const then = [{ start: first, end: last + 1 }];
  const activities = problem.activities.map((activity, i) =>
    i === k
      ? { ...activity, modes: activity.modes.map((m) => ({ ...m, starts: intersect(m.starts ?? then, then) })) }
      : activity,
  );
  return { ...problem, activities };
}

/** The problem in which activity `k` begins at `last` at the latest. */
const upTo = (problem: Problem, k: number, last: number) => within(problem, k, problem.from, last);
/** The problem in which activity `k` begins just at `start`. */
const at = (problem: Problem, k: number, start: number) => within(problem, k, start, start);

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

/** The same in full: what stays first, and where that finds no place, everything tried in turn, from the beginning. */
function inFull(problem: Problem, from: Schedule, free: readonly number[]): Schedule | undefined {
  for (const isFirst of [(i: number) => !free.includes(i), () => false]) {
    const search = searchNear(problem, from, free);
    if (search === undefined) return undefined;
    const place = (list: readonly number[]) => insertAll(search, list, Infinity, false);
    if (place(unplaced(search).filter(isFirst)) && place(unplaced(search))) return search.plan.schedule();
  }
  return undefined;
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

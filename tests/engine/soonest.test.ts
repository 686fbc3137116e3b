import { expect, test } from 'vitest';
import { soonest } from '../../src/engine/soonest.ts';
import type { Problem } from '../../src/engine/problem.ts';
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

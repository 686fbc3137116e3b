import { expect, test } from 'vitest';
import { soonest } from '../../src/engine/soonest.ts';
import { violations } from '../../src/engine/valid.ts';
import fc from '../support/property.ts';
import { bruteForce } from './brute-force.ts';
import { smallProblems } from './small-problems.ts';

test('what is found holds, and nothing is found where there is nothing', () => {
  const seen = { found: 0, sooner: 0, none: 0 };
  fc.assert(
    fc.property(smallProblems({ activities: 4, minutes: 8 }), fc.nat(3), (problem, k) => {
      const from = bruteForce(problem)?.schedule;
      if (from === undefined) {
        // Nowhere to begin from: whatever is wished for, nothing is found.
        const nowhere = { starts: problem.activities.map(() => problem.from), ends: [], modes: [] };
        const anyway = { ...nowhere, ends: nowhere.starts, modes: nowhere.starts.map(() => 0) };
        expect(soonest(problem, anyway, [k])).toBeUndefined();
        seen.none += 1;
        return;
      }
      const found = soonest(problem, from, [k]);
      if (found === undefined) return;
      expect(violations(problem, found)).toEqual([]);
      seen.found += 1;
      if ((found.starts[k] ?? NaN) < (from.starts[k] ?? NaN)) seen.sooner += 1;
    }),
    { numRuns: 400 },
  );
  expect(Math.min(seen.found, seen.none, 5 * seen.sooner)).toBeGreaterThan(20);
});

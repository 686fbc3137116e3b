import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Problem } from '../../src/engine/problem.ts';
import { solve } from '../../src/engine/solve.ts';
import { violations } from '../../src/engine/valid.ts';
import { valueOf } from '../../src/engine/value.ts';
import { bruteForce } from './brute-force.ts';
import { smallProblems } from './small-problems.ts';

/** Holds an answer against enumeration: never wrong, and complete where `complete`. */
function agrees(problem: Problem): void {
  const outcome = solve(problem, { seed: 1, steps: 400 });
  const truth = bruteForce(problem);
  if (outcome.status === 'infeasible') expect(truth).toBeUndefined();
  if (outcome.status === 'infeasible' || outcome.status === 'unknown') return;
  expect(truth).toBeDefined();
  expect(violations(problem, outcome.schedule)).toEqual([]);
  expect(outcome.value).toBe(valueOf(problem, outcome.schedule));
  expect(outcome.bound).toBeLessThanOrEqual(truth?.value ?? Infinity);
  expect(outcome.value).toBeGreaterThanOrEqual(truth?.value ?? -Infinity);
  if (outcome.status === 'optimal') expect(outcome.value).toBe(truth?.value);
}

describe('solve', () => {
  it('never contradicts enumeration of small problems', () => {
    fc.assert(fc.property(smallProblems({ activities: 4, minutes: 8 }), agrees), { numRuns: 300, seed: 20270111 });
  });
});

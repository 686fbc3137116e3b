import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Outcome, Problem } from '../../../src/engine/problem.ts';
import { isExactForm, solveExact } from '../../../src/engine/exact/solve-exact.ts';
import { bruteForce } from './brute-force.ts';
import { smallProblem } from './random-problems.ts';

const unlimited = { seed: 1, steps: Number.MAX_SAFE_INTEGER };

function optimumOf(outcome: Outcome): number | undefined {
  if (outcome.status === 'infeasible') return undefined;
  if (outcome.status !== 'optimal') throw new Error(`not settled: ${outcome.status}`);
  return outcome.value;
}

for (const objective of ['makespan', 'weighted'] as const)
  test(`agrees with trying every schedule: ${objective}`, () => {
    fc.assert(
      fc.property(smallProblem(objective), (problem) => {
        expect(isExactForm(problem)).toBe(true);
        const outcome = solveExact(problem, unlimited);
        expect(optimumOf(outcome)).toBe(bruteForce(problem));
        if (outcome.status === 'optimal')
          expect(bruteForce(pinnedAt(problem, outcome.schedule.starts))).toBe(outcome.value);
      }),
      { numRuns: 1000 },
    );
  });

/** The problem with every start tied to `starts`, so that only this schedule is left. */
function pinnedAt(problem: Problem, starts: readonly number[]): Problem {
  const ties = starts.slice(1).map((start, i) => {
    const gap = start - starts[0]!;
    return { from: 0, fromPoint: 'start', to: i + 1, toPoint: 'start', least: gap, most: gap } as const;
  });
  return { ...problem, lags: [...problem.lags, ...ties] };
}

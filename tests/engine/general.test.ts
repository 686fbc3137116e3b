import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import type { Problem } from '../../src/engine/problem.ts';
import { solveGeneral } from '../../src/engine/general.ts';
import { violations } from '../../src/engine/valid.ts';
import { valueOf } from '../../src/engine/value.ts';
import { bruteForce } from './brute-force.ts';
import { smallProblems } from './small-problems.ts';

const long = process.env['DRYBENCH_LONG'] === '1';

/** Holds an answer against enumeration: small as these problems are, the search must settle every one. */
function agrees(problem: Problem): void {
  const outcome = solveGeneral(problem, { seed: 1, steps: 50_000 });
  const truth = bruteForce(problem);
  if (truth === undefined) {
    expect(outcome.status).toBe('infeasible');
    return;
  }
  if (outcome.status !== 'optimal') throw new Error(`not settled: ${outcome.status}`);
  expect(violations(problem, outcome.schedule)).toEqual([]);
  expect(valueOf(problem, outcome.schedule)).toBe(truth.value);
  expect(outcome.value).toBe(truth.value);
  expect(outcome.bound).toBe(truth.value);
}

/** Within a budget too small to settle anything, what is said must still be true. */
function neverLies(problem: Problem): void {
  const outcome = solveGeneral(problem, { seed: 2, steps: 1 });
  const truth = bruteForce(problem);
  if (outcome.status === 'unknown') return;
  if (outcome.status === 'infeasible') {
    expect(truth).toBeUndefined();
    return;
  }
  expect(violations(problem, outcome.schedule)).toEqual([]);
  expect(outcome.value).toBeGreaterThanOrEqual(truth?.value ?? Infinity);
  expect(outcome.bound).toBeLessThanOrEqual(truth?.value ?? -Infinity);
  expect(outcome.value).toBe(valueOf(problem, outcome.schedule));
}

/** Each part of the objective by itself: no schedule has less of it than its bound. Answers the bound of the modes. */
function boundsHold(problem: Problem): number {
  const outcome = solveGeneral(problem, { seed: 2, steps: 1 });
  if (!('schedule' in outcome)) return 0;
  expect(outcome.modes.value).toBe(valueOf({ ...problem, objective: [] }, outcome.schedule));
  expect(outcome.modes.bound).toBeLessThanOrEqual(bruteForce({ ...problem, objective: [] })?.value ?? -Infinity);
  const free = problem.activities.map((a) => ({ ...a, modes: a.modes.map((mode) => ({ ...mode, cost: 0 })) }));
  outcome.terms.forEach(({ bound }, k) => {
    const alone = { ...problem, activities: free, objective: problem.objective.slice(k, k + 1) };
    expect(bound).toBeLessThanOrEqual(bruteForce(alone)?.value ?? -Infinity);
  });
  return outcome.modes.bound;
}

describe('solve', () => {
  const problems = smallProblems({ activities: 4, minutes: 7 });

  it('agrees with enumeration on small problems of every kind', () => {
    fc.assert(fc.property(problems, agrees), { numRuns: long ? 20_000 : 300, seed: 20270111 });
  });

  it('says of each part of the objective what no schedule can do without, as enumeration has it', () => {
    let most = 0;
    const check = (problem: Problem) => void (most = Math.max(most, boundsHold(problem)));
    fc.assert(fc.property(problems, check), { numRuns: long ? 2000 : 100, seed: 20270112 });
    expect(most).toBeGreaterThan(0);
  });

  it('decides how what comes next is done, where that ends what is held', () => {
    agrees({
      from: 10,
      to: 17,
      resources: [{ name: 'bench', capacity: 2 }],
      exclusions: 0,
      activities: [
        { name: 'work', modes: [{ name: 'at the bench', duration: 1, uses: [{ resource: 0, units: 1 }] }] },
        {
          name: 'wait',
          modes: [
            {
              name: 'on the bench',
              duration: 0,
              starts: [{ start: 10, end: 11 }],
              uses: [{ resource: 0, units: 2, hold: { kind: 'next', next: 2 } }],
            },
          ],
        },
        {
          name: 'clear',
          modes: [
            { name: 'slowly', duration: 1, uses: [], cost: 1 },
            { name: 'at once', duration: 0, starts: [{ start: 11, end: 12 }], uses: [] },
          ],
        },
      ],
      lags: [],
      objective: [{ kind: 'late', name: 'late', activity: 0, weight: 1, due: 10 }],
    });
  });

  it('says nothing untrue when its budget is short', () => {
    fc.assert(fc.property(problems, neverLies), { numRuns: long ? 5000 : 100, seed: 20270112 });
  });
});

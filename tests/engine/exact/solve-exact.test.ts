import fc from '../../support/property.ts';
import { expect, test } from 'vitest';
import { isExactForm, solveExact } from '../../../src/engine/exact/solve-exact.ts';
import type { Outcome, Problem } from '../../../src/engine/problem.ts';
import { bruteForce, costIfValid } from './brute-force.ts';
import { middlingProblem, smallProblem } from './random-problems.ts';
import { jobShop } from './six-by-six.ts';

const long = process.env['DRYBENCH_LONG'] === '1';

const unlimited = { seed: 1, steps: Number.MAX_SAFE_INTEGER };

function optimumOf(problem: Problem, outcome: Outcome): number | undefined {
  if (outcome.status === 'infeasible') return undefined;
  if (outcome.status !== 'optimal') throw new Error(`not settled: ${outcome.status}`);
  expect(costIfValid(problem, outcome.schedule.starts)).toBe(outcome.value);
  expect(outcome.bound).toBe(outcome.value);
  expect(outcome.terms.reduce((sum, term) => sum + term.value, 0)).toBe(outcome.value);
  return outcome.value;
}

for (const objective of ['makespan', 'weighted'] as const)
  test(`agrees with trying every schedule: ${objective}`, () => {
    let possible = 0;
    let impossible = 0;
    fc.assert(
      fc.property(smallProblem(objective), (problem) => {
        expect(isExactForm(problem)).toBe(true);
        const optimum = optimumOf(problem, solveExact(problem, unlimited));
        expect(optimum).toBe(bruteForce(problem));
        if (optimum === undefined) impossible += 1;
        else possible += 1;
      }),
      { numRuns: 800 },
    );
    // Neither kind may die out unnoticed.
    expect(Math.min(possible, impossible)).toBeGreaterThan(100);
  });

for (const objective of ['makespan', 'weighted'] as const)
  test(`keeps every lag and capacity of larger problems: ${objective}`, () => {
    let found = 0;
    fc.assert(
      fc.property(middlingProblem(objective), (problem) => {
        const outcome = solveExact(problem, { seed: 1, steps: 20_000 });
        if (!('value' in outcome)) return;
        found += 1;
        expect(costIfValid(problem, outcome.schedule.starts)).toBe(outcome.value);
        expect(outcome.bound).toBeLessThanOrEqual(outcome.value);
      }),
      { numRuns: long ? 600 : 150 },
    );
    expect(found).toBeGreaterThan(25);
  });

test('a conflict of lags alone cannot be satisfied', () => {
  fc.assert(
    fc.property(smallProblem('makespan'), (problem) => {
      const outcome = solveExact(problem, unlimited);
      if (outcome.status !== 'infeasible' || outcome.conflict.resources.length > 0) return;
      const { lags } = outcome.conflict;
      const alone = { ...problem, resources: [], lags: problem.lags.filter((_, k) => lags.includes(k)) };
      expect(bruteForce(withoutUses(alone))).toBeUndefined();
    }),
    { numRuns: 300 },
  );
});

function withoutUses(problem: Problem): Problem {
  const activities = problem.activities.map((a) => ({ ...a, modes: a.modes.map((mode) => ({ ...mode, uses: [] })) }));
  return { ...problem, activities };
}

// H. Fisher, G. L. Thompson, "Probabilistic learning combinations of local job-shop scheduling rules", in: Industrial
// Scheduling (1963), the 6 × 6 problem; data and optimum 55 from memory.
test('the 6 × 6 job shop takes 55', () => {
  const problem = jobShop();
  expect(optimumOf(problem, solveExact(problem, unlimited))).toBe(55);
});

test('the 6 × 6 job shop cannot be done in 54', () => {
  expect(solveExact({ ...jobShop(), to: 54 }, unlimited).status).toBe('infeasible');
});

test('the same seed and steps give the same answer, and more steps never a worse one', () => {
  const problem = jobShop();
  for (const steps of [50, 500, 5000]) {
    const once = solveExact(problem, { seed: 7, steps });
    expect(solveExact(problem, { seed: 7, steps })).toEqual(once);
    const longer = solveExact(problem, { seed: 7, steps: 10 * steps });
    if ('value' in once && 'value' in longer) expect(longer.value).toBeLessThanOrEqual(once.value);
  }
});

test('stopped at once, it claims nothing it has not proven', () => {
  fc.assert(
    fc.property(smallProblem('makespan'), (problem) => {
      const outcome = solveExact(problem, { ...unlimited, stop: () => true });
      const optimum = bruteForce(problem);
      if (outcome.status === 'infeasible') expect(optimum).toBeUndefined();
      if ('value' in outcome) {
        expect(costIfValid(problem, outcome.schedule.starts)).toBe(outcome.value);
        expect(outcome.bound).toBeLessThanOrEqual(optimum!);
        expect(outcome.value).toBeGreaterThanOrEqual(optimum!);
      }
    }),
    { numRuns: 300 },
  );
});

test('what it cannot take, it does not claim as its own', () => {
  const problem = jobShop();
  const first = problem.activities[0]!;
  const mode = first.modes[0]!;
  const others = [
    { ...first, modes: [mode, mode] },
    { ...first, modes: [{ ...mode, calendar: [{ start: 0, end: 9 }] }] },
    { ...first, modes: [{ ...mode, presences: [{ exclusion: 0, side: 0 as const }] }] },
    { ...first, modes: [{ ...mode, uses: [{ resource: 0, units: 1, hold: { kind: 'next' as const, next: 1 } }] }] },
  ];
  for (const other of others)
    expect(isExactForm({ ...problem, activities: [other, ...problem.activities.slice(1)] })).toBe(false);
  expect(isExactForm({ ...problem, objective: [{ kind: 'moved', name: 'm', activity: 0, weight: 1, at: 3 }] })).toBe(
    false,
  );
  expect(isExactForm(problem)).toBe(true);
});

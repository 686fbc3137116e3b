import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { smallestConflict } from '../../src/engine/conflict.ts';
import type { Problem } from '../../src/engine/problem.ts';
import { bruteForce } from './brute-force.ts';
import { smallProblems } from './small-problems.ts';

/** `problem` with only the given lags. */
function withLags(problem: Problem, kept: ReadonlySet<number>): Problem {
  return { ...problem, lags: problem.lags.filter((_, index) => kept.has(index)) };
}

describe('conflicts', () => {
  it('are impossible together and possible without any one of them', () => {
    let found = 0;
    fc.assert(
      fc.property(smallProblems({ activities: 3, minutes: 7, lags: 7 }), (problem) => {
        const result = smallestConflict(problem.lags.length, (kept) => withLags(problem, kept), {
          seed: 1,
          steps: 20_000,
        });
        const possible = (kept: readonly number[]) => bruteForce(withLags(problem, new Set(kept))) !== undefined;
        const all = [...problem.lags.keys()];
        expect(result.kind).toBe(possible(all) ? 'possible' : 'conflict');
        if (result.kind !== 'conflict') return;
        expect(result.minimal).toBe(true);
        expect(possible(result.groups)).toBe(false);
        for (const dropped of result.groups) expect(possible(result.groups.filter((k) => k !== dropped))).toBe(true);
        if (result.groups.length > 1) found += 1;
      }),
      { numRuns: 150, seed: 20270114 },
    );
    expect(found).toBeGreaterThan(3);
  });

  it('says so where the budget leaves it unproven', () => {
    // Three jobs of 10 on a bench of one, 29 minutes for them: no lag or label shows that it cannot be.
    const job = { name: 'job', modes: [{ name: 'job', duration: 10, uses: [{ resource: 0, units: 1 }], cost: 0 }] };
    const pausing = { ...job, modes: [{ ...job.modes[0]!, calendar: [{ start: 0, end: 29 }] }] };
    const problem: Problem = {
      from: 0,
      to: 29,
      resources: [{ name: 'bench', capacity: 1 }],
      exclusions: 0,
      activities: [pausing, pausing, pausing],
      lags: [],
      objective: [],
    };
    expect(smallestConflict(0, () => problem, { seed: 1, steps: 1 }).kind).toBe('unproven');
    expect(smallestConflict(0, () => problem, { seed: 1, steps: 1000 })).toMatchObject({
      kind: 'conflict',
      groups: [],
    });
  });
});

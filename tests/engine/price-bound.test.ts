import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { Labels } from '../../src/engine/labels.ts';
import { netOf } from '../../src/engine/net.ts';
import { priceBound } from '../../src/engine/prices/price-bound.ts';
import type { Problem } from '../../src/engine/problem.ts';
import { structureOf } from '../../src/engine/structure.ts';
import { bruteForce } from './brute-force.ts';
import { smallProblems } from './small-problems.ts';

const long = process.env['DRYBENCH_LONG'] === '1';

function boundOf(problem: Problem, target: number, horizon: number, bucketMinutes: number): number | undefined {
  const net = netOf(problem);
  const labels = new Labels(net);
  if (!labels.propagate()) return undefined;
  return priceBound(net, labels, structureOf(net, labels), target, horizon, 50_000, { bucketMinutes: [bucketMinutes] });
}

describe('the bound by prices', () => {
  it('never lies above the least value that enumeration finds', () => {
    const settings = fc.record({
      over: fc.integer({ min: 0, max: 20 }),
      cut: fc.integer({ min: 0, max: 5 }),
      bucketMinutes: fc.integer({ min: 1, max: 3 }),
    });
    fc.assert(
      fc.property(smallProblems({ activities: 4, minutes: 7 }), settings, (problem, { over, cut, bucketMinutes }) => {
        const truth = bruteForce(problem);
        if (truth === undefined) return;
        const bound = boundOf(problem, truth.value + over, problem.to - cut, bucketMinutes);
        expect(bound).toBeLessThanOrEqual(truth.value + 1e-6);
      }),
      { numRuns: long ? 10_000 : 300, seed: 20270115 },
    );
  });

  it('sees that one hand cannot do two jobs at once', () => {
    // Two jobs of 10 by one hand, weights 1 and 2: the heavier first, 2 × 10 + 20 = 40; without the hand, 30.
    const job = { name: 'job', modes: [{ name: 'job', duration: 10, uses: [{ resource: 0, units: 1 }] }] };
    const problem: Problem = {
      from: 0,
      to: 60,
      resources: [{ name: 'hand', capacity: 1 }],
      exclusions: 0,
      activities: [job, job],
      lags: [],
      objective: [
        { kind: 'end', name: 'one', activity: 0, weight: 1 },
        { kind: 'end', name: 'two', activity: 1, weight: 2 },
      ],
    };
    const bound = boundOf(problem, 40, 60, 1);
    expect(bound).toBeGreaterThan(39);
    expect(bound).toBeLessThanOrEqual(40);
  });
});

import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { priceBound } from '../../src/engine/prices/price-bound.ts';
import type { Problem, Schedule } from '../../src/engine/problem.ts';
import { solve } from '../../src/engine/solve.ts';
import { bruteForce } from './brute-force.ts';
import { numbered } from './numbered.ts';
import { recoatProblems } from './recoat-problems.ts';
import { shopLike } from './shop-like.ts';
import { smallProblems } from './small-problems.ts';

const long = process.env['DRYBENCH_LONG'] === '1';

/** The bound that is found from `schedule`, which is said to cost `value`. */
function boundOf(
  problem: Problem,
  schedule: Schedule,
  value: number,
  horizon: number,
  bucketMinutes: number,
  { work = 50_000, finestMinutes = 1, stop }: { work?: number; finestMinutes?: number; stop?: () => boolean } = {},
): number {
  const { net, labels, structure, settled } = numbered(problem, schedule);
  const options = { work, bucketMinutes: [bucketMinutes], finestMinutes, stop };
  return priceBound(net, labels, structure, { ...settled, value }, horizon, options).bound;
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
        const { schedule, value } = truth;
        const bound = boundOf(problem, schedule, value + over, problem.to - cut, bucketMinutes);
        expect(bound).toBeLessThanOrEqual(value + 1e-6);
      }),
      { numRuns: long ? 10_000 : 300, seed: 20270115 },
    );
  });

  it('nor where one coat goes over another, inside its window or after a preparation', () => {
    const settings = fc.record({ over: fc.integer({ min: 0, max: 9 }), bucketMinutes: fc.integer({ min: 1, max: 3 }) });
    fc.assert(
      fc.property(recoatProblems(), settings, (problem, { over, bucketMinutes }) => {
        const truth = bruteForce(problem);
        if (truth === undefined) return;
        const { schedule, value } = truth;
        expect(boundOf(problem, schedule, value + over, problem.to, bucketMinutes)).toBeLessThanOrEqual(value + 1e-6);
      }),
      { numRuns: long ? 10_000 : 300, seed: 20270116 },
    );
  });

  it('is not looked at in the finest buckets any more once an end is asked for', () => {
    const problem = shopLike(6, 8);
    const outcome = solve(problem, { seed: 1, steps: 200 });
    if (!('schedule' in outcome)) throw new Error('a made-up shop has a plan');
    const { schedule, value } = outcome;
    const horizon = Math.max(...schedule.ends);
    const bound = (finestMinutes: number, stop: boolean) =>
      boundOf(problem, schedule, value, horizon, 60, { work: 60e6, finestMinutes, stop: () => stop });
    // Finer buckets can tell something here, and then cost their work.
    expect(bound(5, false)).toBeGreaterThan(bound(60, false));
    expect(bound(5, true)).toBe(bound(60, true));
  });

  it('does not fall when more work goes into it', () => {
    const problem = shopLike(6, 8);
    const outcome = solve(problem, { seed: 1, steps: 200 });
    if (!('schedule' in outcome)) throw new Error('a made-up shop has a plan');
    const { schedule, value } = outcome;
    const horizon = Math.max(...schedule.ends);
    const bounds = [20, 60].map((millions) =>
      boundOf(problem, schedule, value, horizon, 15, { work: millions * 1e6, finestMinutes: 15 }),
    );
    expect(bounds[1]).toBeGreaterThanOrEqual(0.9995 * (bounds[0] ?? Infinity));
  });

  it('sees that a window that shuts too early asks for the longer wait', () => {
    // Ready from 10: the coat ends at 2, its window is 2 to 4 minutes later, but nothing may start before 9.
    const problem: Problem = {
      from: 0,
      to: 40,
      resources: [],
      exclusions: 0,
      activities: [
        { name: 'coat 1', modes: [{ name: 'coat', duration: 2, starts: [{ start: 0, end: 1 }], uses: [] }] },
        {
          name: 'prepare',
          modes: [
            { name: 'none', duration: 0, uses: [] },
            { name: 'sand', duration: 3, uses: [] },
          ],
        },
        { name: 'coat 2', modes: [{ name: 'coat', duration: 1, starts: [{ start: 9, end: 40 }], uses: [] }] },
      ],
      lags: [
        { from: 0, fromPoint: 'end', to: 1, toPoint: 'start', least: 0 },
        { from: 1, fromPoint: 'end', to: 2, toPoint: 'start', least: 0 },
        { from: 0, fromPoint: 'end', to: 2, toPoint: 'start', least: 2, most: 4, when: [{ activity: 1, modes: [0] }] },
        { from: 0, fromPoint: 'end', to: 1, toPoint: 'start', least: 20, when: [{ activity: 1, modes: [1] }] },
      ],
      objective: [{ kind: 'end', name: 'ready', activity: 2, weight: 1 }],
    };
    // Sanding from 22 to 25, the coat to 26.
    expect(bruteForce(problem)?.value).toBe(26);
    const schedule = { starts: [0, 22, 25], ends: [2, 25, 26], modes: [0, 1, 0] };
    expect(boundOf(problem, schedule, 26, 40, 1)).toBeCloseTo(26, 5);
  });

  it('sees that a coat whose window shuts cannot be followed after it', () => {
    // Coat 1 wants to be early, coat 2 at 10; but the window after coat 1 at 0 is 3 to 6, which leaves 4: 1 + 6.
    const starts = (...minutes: number[]) => minutes.map((t) => ({ start: t, end: t + 1 }));
    const hand = [{ resource: 0, units: 1 }];
    const problem: Problem = {
      from: 0,
      to: 40,
      resources: [{ name: 'hand', capacity: 2 }],
      exclusions: 0,
      activities: [
        { name: 'coat 1', modes: [{ name: 'coat', duration: 1, starts: starts(0, 20), uses: hand }] },
        { name: 'coat 2', modes: [{ name: 'coat', duration: 1, starts: starts(4, 10, 25), uses: hand }] },
      ],
      lags: [{ from: 0, fromPoint: 'end', to: 1, toPoint: 'start', least: 2, most: 5 }],
      objective: [
        { kind: 'end', name: 'early', activity: 0, weight: 1 },
        { kind: 'moved', name: 'at ten', activity: 1, weight: 1, at: 10 },
      ],
    };
    expect(bruteForce(problem)?.value).toBe(7);
    const schedule = { starts: [0, 4], ends: [1, 5], modes: [0, 0] };
    expect(boundOf(problem, schedule, 7, 40, 1)).toBeCloseTo(7, 5);
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
    const bound = boundOf(problem, { starts: [10, 0], ends: [20, 10], modes: [0, 0] }, 40, 60, 1);
    expect(bound).toBeGreaterThan(39);
    expect(bound).toBeLessThanOrEqual(40);
  });
});

import { expect, test } from 'vitest';
import { Labels } from '../../src/engine/labels.ts';
import { netOf } from '../../src/engine/net.ts';
import type { Problem, Schedule } from '../../src/engine/problem.ts';
import fc from '../support/property.ts';
import { bruteForce } from './brute-force.ts';
import { smallProblems } from './small-problems.ts';

/** The problem with one activity of `schedule` in the place that it has there, as if nothing could be chosen of it. */
function withSettled(problem: Problem, { starts, modes }: Schedule, settled: number): Problem {
  const activities = problem.activities.map((activity, i) => {
    const start = starts[i];
    if (i !== settled || start === undefined) return activity;
    const place = [{ start, end: start + 1 }];
    return {
      ...activity,
      modes: activity.modes.map((mode, m) => ({ ...mode, starts: m === modes[i] ? place : [] })),
    };
  });
  return { ...problem, activities };
}

test('leave out no schedule that there is, with the latest or without, and fail only where there is none', () => {
  const seen = { schedules: 0, none: 0 };
  fc.assert(
    fc.property(smallProblems({ activities: 4, minutes: 8 }), fc.nat(3), (problem, k) => {
      const found = bruteForce(problem)?.schedule;
      const settled = found === undefined ? problem : withSettled(problem, found, k);
      for (const asked of [problem, settled])
        for (const bounds of ['both', 'earliest'] as const) {
          const labels = new Labels(netOf(asked), bounds);
          if (!labels.propagate()) {
            expect(found).toBeUndefined();
            seen.none += 1;
            continue;
          }
          for (const [i, start] of found?.starts.entries() ?? []) {
            expect(labels.earliestStart(i)).toBeLessThanOrEqual(start);
            expect(labels.latestStart(i)).toBeGreaterThanOrEqual(start);
            expect(labels.earliestEnd(i)).toBeLessThanOrEqual(found?.ends[i] ?? NaN);
            expect(labels.latestEnd(i)).toBeGreaterThanOrEqual(found?.ends[i] ?? NaN);
          }
          seen.schedules += found === undefined ? 0 : 1;
        }
    }),
    { numRuns: 400 },
  );
  expect(Math.min(seen.schedules, seen.none)).toBeGreaterThan(50);
});

test('by lags alone the latest starts are those of the longest way back, also past what is settled', () => {
  const step = (name: string, starts?: readonly { start: number; end: number }[]) => ({
    name,
    modes: [{ name, duration: 2, uses: [], ...(starts && { starts }) }],
  });
  const after = (from: number, to: number, least: number) =>
    ({ from, fromPoint: 'end', to, toPoint: 'start', least }) as const;
  const problem: Problem = {
    from: 0,
    to: 40,
    resources: [],
    exclusions: 0,
    activities: [step('a'), step('b', [{ start: 20, end: 21 }]), step('c')],
    lags: [after(0, 1, 3), after(1, 2, 4)],
    objective: [],
  };
  const both = new Labels(netOf(problem));
  expect(both.propagate()).toBe(true);
  expect([0, 1, 2].map((i) => [both.earliestStart(i), both.latestStart(i)])).toEqual([
    [0, 15],
    [20, 20],
    [26, 38],
  ]);
  const earliest = new Labels(netOf(problem), 'earliest');
  expect(earliest.propagate()).toBe(true);
  expect([0, 1, 2].map((i) => [earliest.earliestStart(i), earliest.latestStart(i)])).toEqual([
    [0, 38],
    [20, 20],
    [26, 38],
  ]);
});

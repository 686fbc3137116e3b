import { describe, expect, it } from 'vitest';
import { construct } from '../../src/engine/construct.ts';
import { followUps, reachOf, startInTime } from '../../src/engine/follow-up.ts';
import { Labels } from '../../src/engine/labels.ts';
import { netOf } from '../../src/engine/net.ts';
import type { Problem } from '../../src/engine/problem.ts';
import { searchOf } from '../../src/engine/search.ts';
import { NEVER } from '../../src/time/time-map.ts';
import fc from '../support/property.ts';
import { bruteForce } from './brute-force.ts';
import { recoatProblems } from './recoat-problems.ts';

function laidOut(problem: Problem) {
  const net = netOf(problem);
  const labels = new Labels(net);
  return { net, labels, possible: labels.propagate() };
}

/** The first coat's only mode, and what follows it; undefined where there is no schedule. */
function firstCoat(problem: Problem) {
  const { net, labels, possible } = laidOut(problem);
  const [mode] = net.modes;
  const follow = possible && mode !== undefined ? followUps(net, labels)(mode) : undefined;
  return follow === undefined || mode === undefined ? undefined : { follow, slots: mode.slots };
}

/** The earliest second coat of all schedules in which the first one is laid in `mode` at `start`. */
function earliestSecond(problem: Problem, mode: number, start: number): number {
  const [coat, ...others] = problem.activities;
  const laid = coat?.modes[mode];
  if (laid === undefined) throw new Error('no such mode');
  const only = { ...laid, starts: [{ start, end: start + 1 }] };
  const found = bruteForce({
    ...problem,
    activities: [{ name: 'coat 1', modes: [only] }, ...others],
    lags: problem.lags,
    objective: [{ kind: 'end', name: 'second', activity: 2, weight: 1 }],
  });
  return found?.schedule.starts[2] ?? NEVER;
}

/** Two coats with nothing else about, whose first can be laid in one mode alone. */
const alone = recoatProblems().map((problem): Problem => {
  const [coat, ...others] = problem.activities.slice(0, 3);
  return {
    ...problem,
    activities: coat === undefined ? [] : [{ ...coat, modes: coat.modes.slice(0, 1) }, ...others],
    objective: problem.objective.filter((term) => term.activity === 2),
  };
});

describe('what follows a coat', () => {
  it('comes no later than is said, and never before', () => {
    let told = 0;
    fc.assert(
      fc.property(alone, (problem) => {
        const first = firstCoat(problem);
        if (first === undefined) return;
        const { follow, slots } = first;
        for (let start = slots.fit(problem.from); start !== NEVER; start = slots.fit(start + 1)) {
          const truth = earliestSecond(problem, 0, start);
          const reach = reachOf(follow, start);
          expect(reach).toBeLessThanOrEqual(truth);
          if (truth < NEVER && reach === truth) told += 1;
        }
      }),
      { numRuns: 150, seed: 20270120 },
    );
    expect(told).toBeGreaterThan(100);
  });

  it('asks for a start after which a window is open that is else shut by then', () => {
    fc.assert(
      fc.property(alone, (problem) => {
        const first = firstCoat(problem);
        if (first === undefined) return;
        const { follow, slots } = first;
        const opensAnew = (start: number, later: number): boolean =>
          follow.windows.some(({ most }) => {
            const [shut, shutLater] = [start, later].map((s) => most?.at(slots.end(s)) ?? NEVER);
            return follow.wait.slots.some((own) => own.fit((shut ?? NEVER) + 1) <= (shutLater ?? NEVER));
          });
        for (let start = slots.fit(problem.from); start !== NEVER; start = slots.fit(start + 1)) {
          let later = slots.fit(start + 1);
          while (later !== NEVER && !opensAnew(start, later)) later = slots.fit(later + 1);
          expect(startInTime(follow, start)).toBe(later);
        }
      }),
      { numRuns: 150, seed: 20270121 },
    );
  });
});

describe('a coat whose window shuts overnight', () => {
  // Coats can be laid in hours 9 to 16 of each day; the second 2 to 14 hours after the first, or a day later and abraded.
  const day = 24;
  const open = [0, 1, 2].map((d) => ({ start: d * day + 9, end: d * day + 16 }));
  const coat = { name: 'coat', duration: 1, starts: open, uses: [] };
  const problem: Problem = {
    from: 9,
    to: 3 * day,
    resources: [],
    exclusions: 0,
    activities: [
      { name: 'coat 1', modes: [coat] },
      {
        name: 'prepare',
        modes: [
          { name: 'none', duration: 0, uses: [] },
          { name: 'abrade', duration: 1, uses: [], cost: 1 },
        ],
      },
      { name: 'coat 2', modes: [coat] },
    ],
    lags: [
      { from: 0, fromPoint: 'end', to: 1, toPoint: 'start', least: 8 },
      { from: 1, fromPoint: 'end', to: 2, toPoint: 'start', least: 0 },
      { from: 0, fromPoint: 'end', to: 2, toPoint: 'start', least: 2, most: 18, when: [{ activity: 1, modes: [0] }] },
      { from: 0, fromPoint: 'end', to: 1, toPoint: 'start', least: 30, when: [{ activity: 1, modes: [1] }] },
    ],
    objective: [{ kind: 'end', name: 'ready', activity: 2, weight: 1 }],
  };

  it('is followed by the abraded one if laid early: what lies between comes after the window has shut', () => {
    const first = firstCoat(problem);
    if (first === undefined) throw new Error('the second coat follows the first');
    // Laid from 9 to 10, abraded from 40 to 41, and then nothing can be laid before the third morning.
    expect(earliestSecond(problem, 0, 9)).toBe(57);
    expect(reachOf(first.follow, 9)).toBe(57);
  });

  it('is laid so late that the next goes over it the morning after, as by trying everything', () => {
    const truth = bruteForce(problem);
    const { net, labels } = laidOut(problem);
    const search = searchOf(net, labels, 1);
    expect(construct(search, [0])).toBe(-1);
    expect(search.plan.value).toBe(truth?.value);
    // 33 is nine in the morning; 18 hours before that the first coat ends.
    expect([...search.plan.starts]).toEqual([14, expect.any(Number), 33]);
  });
});

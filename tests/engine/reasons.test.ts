import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import type { Activity, Problem } from '../../src/engine/problem.ts';
import { type Reason, reasonsFor } from '../../src/engine/reasons.ts';
import { solveGeneral } from '../../src/engine/general.ts';
import { endOf, violations } from '../../src/engine/valid.ts';
import { smallProblems } from './small-problems.ts';

function activity(name: string, duration: number, rest: Partial<Activity['modes'][number]> = {}): Activity {
  return { name, modes: [{ name, duration, uses: [], ...rest }] };
}

function reasonsIn(parts: Partial<Problem>, starts: number[]): Reason[] {
  const problem: Problem = {
    from: 0,
    to: 100,
    resources: [{ name: 'bench', capacity: 1 }],
    exclusions: 1,
    activities: [],
    lags: [],
    objective: [],
    ...parts,
  };
  const ends = starts.map((start, i) => start + problem.activities[i]!.modes[0]!.duration);
  const schedule = { starts, ends, modes: starts.map(() => 0) };
  expect(violations(problem, schedule)).toEqual([]);
  return reasonsFor(problem, schedule, starts.length - 1);
}

describe('reasons', () => {
  it('names the beginning', () => {
    expect(reasonsIn({ activities: [activity('a', 5)] }, [0])).toEqual([{ kind: 'beginning' }]);
  });

  it('names closed hours', () => {
    const spans = [
      { start: 0, end: 10 },
      { start: 30, end: 40 },
    ];
    expect(reasonsIn({ activities: [activity('a', 5, { starts: spans })] }, [30])).toEqual([
      { kind: 'closed', from: 9, until: 30 },
    ]);
  });

  it('names the wait', () => {
    const lags = [{ from: 0, fromPoint: 'end', to: 1, toPoint: 'start', least: 7 }] as const;
    expect(reasonsIn({ activities: [activity('a', 5), activity('b', 5)], lags }, [0, 12])).toEqual([
      { kind: 'lag', lag: 0, edge: 'least', activity: 0 },
    ]);
  });

  it('names the window that a later activity needs', () => {
    const lags = [{ from: 1, fromPoint: 'end', to: 0, toPoint: 'start', most: 3 }] as const;
    expect(reasonsIn({ activities: [activity('late', 5), activity('b', 5)], lags }, [20, 12])).toEqual([
      { kind: 'lag', lag: 0, edge: 'most', activity: 0 },
    ]);
  });

  it('names who is on the bench', () => {
    const uses = [{ resource: 0, units: 1 }];
    expect(reasonsIn({ activities: [activity('a', 5, { uses }), activity('b', 5, { uses })] }, [3, 8])).toEqual([
      { kind: 'resource', resource: 0, activities: [0] },
    ]);
  });

  it('names the dust that is in the way', () => {
    const activities = [
      activity('sand', 5, { presences: [{ exclusion: 0, side: 1 }] }),
      activity('coat', 5, { presences: [{ exclusion: 0, side: 0 }] }),
    ];
    expect(reasonsIn({ activities }, [3, 8])).toEqual([{ kind: 'exclusion', exclusion: 0, activity: 0 }]);
  });

  it('names nothing where an activity could start a minute earlier', () => {
    expect(reasonsIn({ activities: [activity('a', 5)] }, [4])).toEqual([]);
  });

  it('has nothing to say only of activities that one more try would move', () => {
    fc.assert(
      fc.property(smallProblems({ activities: 4, minutes: 8 }), (problem) => {
        const outcome = solveGeneral(problem, { seed: 1, steps: 500 });
        if (!('schedule' in outcome)) return;
        const { schedule } = outcome;
        problem.activities.forEach((_, i) => {
          const start = schedule.starts[i]! - 1;
          const end = endOf(problem.activities[i]!.modes[schedule.modes[i]!]!, start);
          if (end === undefined) return;
          const moved = { ...schedule, starts: schedule.starts.with(i, start), ends: schedule.ends.with(i, end) };
          const free = violations(problem, moved).length === 0;
          expect(reasonsFor(problem, schedule, i).length === 0).toBe(free);
        });
      }),
      { numRuns: 150, seed: 20270113 },
    );
  });
});

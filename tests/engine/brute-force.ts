import { endOf, imageOf, isActive, pointOf, violations } from '../../src/engine/valid.ts';
import { valueOf } from '../../src/engine/value.ts';
import type { Problem, Schedule } from '../../src/engine/problem.ts';

/** What enumeration finds: the least value and a schedule that has it, or `undefined` if there is no schedule. */
export type BruteForced = { readonly value: number; readonly schedule: Schedule } | undefined;

/**
 * Tries every mode and every minute for every activity, judging by `violations` and `valueOf` alone; only lags between
 * activities already set cut it short. For problems of a few activities over a few minutes.
 */
export function bruteForce(problem: Problem): BruteForced {
  const starts: number[] = [];
  const ends: number[] = [];
  const modes: number[] = [];
  let best: BruteForced;
  const schedule: Schedule = { starts, ends, modes };
  const tryAll = (i: number): void => {
    const activity = problem.activities[i];
    if (activity === undefined) {
      const value = valueOf(problem, schedule);
      if (best !== undefined && value >= best.value) return;
      if (violations(problem, schedule).length > 0) return;
      best = { value, schedule: { starts: [...starts], ends: [...ends], modes: [...modes] } };
      return;
    }
    activity.modes.forEach((mode, m) => {
      const spans = mode.starts ?? [{ start: problem.from, end: problem.to + 1 }];
      for (const span of spans)
        for (let start = span.start; start < span.end; start++) {
          const end = endOf(mode, start);
          if (end === undefined || end > problem.to) continue;
          starts[i] = start;
          ends[i] = end;
          modes[i] = m;
          if (lagsHold(problem, schedule, i)) tryAll(i + 1);
        }
    });
    starts.length = ends.length = modes.length = i;
  };
  tryAll(0);
  return best;
}

/** Do the lags hold of which activity `last` is the latest party set? */
function lagsHold(problem: Problem, schedule: Schedule, last: number): boolean {
  return problem.lags.every((lag) => {
    const parties = [lag.from, lag.to, ...(lag.when ?? []).map((condition) => condition.activity)];
    if (Math.max(...parties) !== last || !isActive(lag, schedule.modes)) return true;
    const a = pointOf(schedule, lag.from, lag.fromPoint);
    const b = pointOf(schedule, lag.to, lag.toPoint);
    if (lag.least !== undefined && imageOf(lag.least, a) > b) return false;
    return lag.most === undefined || b <= imageOf(lag.most, a);
  });
}

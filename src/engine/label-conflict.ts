import type { Labels } from './labels.ts';
import type { Conflict } from './problem.ts';
import { int } from '../typed.ts';

/** The chain of lags that leaves an activity without a start, after `propagate` failed. */
export function labelConflict(labels: Labels): Conflict {
  const activities = new Set<number>();
  const lags = new Set<number>();
  for (const reasons of [labels.earliestReason, labels.latestReason]) {
    const passed = new Set<number>();
    for (let i = labels.failed; !passed.has(i);) {
      passed.add(i);
      activities.add(i);
      const lag = labels.net.lags[int(reasons, i)];
      if (lag === undefined) break;
      lags.add(lag.index);
      for (const condition of lag.when) activities.add(condition.activity);
      i = lag.from === i ? lag.to : lag.from;
    }
  }
  const ordered = (set: Set<number>): number[] => [...set].sort((a, b) => a - b);
  return { activities: ordered(activities), lags: ordered(lags), resources: [] };
}

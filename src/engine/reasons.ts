import { at } from '../at.ts';
import type { Minute } from '../time/span.ts';
import { ALWAYS } from '../time/time-map.ts';
import type { Mode, Problem, Schedule } from './problem.ts';
import { endOf, imageOf, modeOf, pointOf, type Violation, violations } from './valid.ts';

/**
 * One thing that keeps an activity from starting earlier, all others staying where they are.
 * - `beginning`: its mode has no earlier start at all.
 * - `closed`: no start is allowed after `from` and before `until`, where it starts.
 * - `lag`: the lag's `least` or `most` (the `edge`) would be broken towards `activity`.
 * - `resource`: `activities` leave no room on `resource`.
 * - `exclusion`: the presence of `activity` is in the way.
 * - `sameResource`: `activity` would have to be moved while it keeps `resource`.
 */
export type Reason =
  | { readonly kind: 'beginning' }
  | { readonly kind: 'closed'; readonly from: Minute; readonly until: Minute }
  | { readonly kind: 'lag'; readonly lag: number; readonly edge: 'least' | 'most'; readonly activity: number }
  | { readonly kind: 'resource'; readonly resource: number; readonly activities: readonly number[] }
  | { readonly kind: 'exclusion'; readonly exclusion: number; readonly activity: number }
  | { readonly kind: 'sameResource'; readonly resource: number; readonly activity: number };

/**
 * Why activity `i` of a valid `schedule` does not start earlier in its mode: what would break if it started at the
 * allowed start just before. Empty: nothing holds it.
 */
export function reasonsFor(problem: Problem, schedule: Schedule, i: number): Reason[] {
  const mode = modeOf(problem, schedule, i);
  const start = at(schedule.starts, i);
  const earlier = startBefore(problem, mode, start);
  const end = earlier === ALWAYS ? undefined : endOf(mode, earlier);
  if (end === undefined) return [{ kind: 'beginning' }];
  const moved: Schedule = {
    starts: schedule.starts.with(i, earlier),
    ends: schedule.ends.with(i, end),
    modes: schedule.modes,
  };
  const closed: Reason[] = earlier < start - 1 ? [{ kind: 'closed', from: earlier, until: start }] : [];
  return [...closed, ...violations(problem, moved).flatMap((violation) => reasonOf(problem, moved, i, violation))];
}

/** Last allowed start of `mode` before `start`; ALWAYS if there is none. */
function startBefore(problem: Problem, mode: Mode, start: Minute): Minute {
  const lastIn = (spans: readonly { start: Minute; end: Minute }[], limit: Minute): Minute =>
    spans.reduce((last, span) => (span.start <= limit ? Math.max(last, Math.min(limit, span.end - 1)) : last), ALWAYS);
  const starts = mode.starts ?? [{ start: problem.from, end: problem.to + 1 }];
  for (let limit = start - 1; limit > ALWAYS;) {
    const inStarts = lastIn(starts, limit);
    const inBoth = mode.calendar === undefined ? inStarts : lastIn(mode.calendar, inStarts);
    if (inBoth === inStarts) return inBoth;
    limit = inBoth;
  }
  return ALWAYS;
}

function reasonOf(problem: Problem, moved: Schedule, i: number, violation: Violation): Reason[] {
  const { rule, lag, resource, exclusion } = violation;
  const others = violation.activities.filter((k) => k !== i);
  const [other] = others;
  if (rule === 'lag' && lag !== undefined)
    return [{ kind: 'lag', lag, edge: brokenEdge(problem, moved, lag), activity: other ?? i }];
  if (rule === 'capacity' && resource !== undefined) return [{ kind: 'resource', resource, activities: others }];
  if (rule === 'exclusion' && exclusion !== undefined) return [{ kind: 'exclusion', exclusion, activity: other ?? i }];
  if (rule === 'sameResource' && resource !== undefined)
    return [{ kind: 'sameResource', resource, activity: other ?? i }];
  return [];
}

function brokenEdge(problem: Problem, moved: Schedule, index: number): 'least' | 'most' {
  const lag = at(problem.lags, index);
  const a = pointOf(moved, lag.from, lag.fromPoint);
  const b = pointOf(moved, lag.to, lag.toPoint);
  return lag.least !== undefined && imageOf(lag.least, a) > b ? 'least' : 'most';
}

import { at } from '../at.ts';
import type { Minute, Spans } from '../time/span.ts';
import type { TimeMap } from '../time/time-map.ts';
import type { Lag, Mode, Point, Problem, Schedule, Use } from './problem.ts';

/** One broken rule of a schedule, with the indices of what takes part in it. */
export interface Violation {
  readonly rule: 'mode' | 'start' | 'end' | 'horizon' | 'capacity' | 'exclusion' | 'lag' | 'sameResource';
  readonly activities: readonly number[];
  readonly lag?: number;
  readonly resource?: number;
  readonly exclusion?: number;
  readonly minute?: Minute;
}

interface Stretch {
  readonly activity: number;
  readonly from: Minute;
  readonly until: Minute;
  readonly units: number;
}

/**
 * Every rule of `problem` that `schedule` breaks, straight from the definitions of problem.ts. It shares nothing with
 * the search, so that it can judge it.
 */
export function violations(problem: Problem, schedule: Schedule): Violation[] {
  const badModes = problem.activities.flatMap((activity, i): Violation[] =>
    activity.modes[schedule.modes[i] ?? -1] === undefined ? [{ rule: 'mode', activities: [i] }] : [],
  );
  if (badModes.length > 0) return badModes;
  return [
    ...problem.activities.flatMap((_, i) => ownViolations(problem, schedule, i)),
    ...problem.lags.flatMap((lag, index): Violation[] =>
      lagHolds(lag, schedule) ? [] : [{ rule: 'lag', activities: [lag.from, lag.to], lag: index }],
    ),
    ...sameResourceViolations(problem, schedule),
    ...capacityViolations(problem, schedule),
    ...exclusionViolations(problem, schedule),
  ];
}

/** The mode that `schedule` chooses for activity `i`. */
export function modeOf(problem: Problem, schedule: Schedule, i: number): Mode {
  return at(at(problem.activities, i).modes, at(schedule.modes, i));
}

function inside(spans: Spans, minute: Minute): boolean {
  return spans.some((span) => span.start <= minute && minute < span.end);
}

function ownViolations(problem: Problem, schedule: Schedule, i: number): Violation[] {
  const mode = modeOf(problem, schedule, i);
  const start = at(schedule.starts, i);
  const end = at(schedule.ends, i);
  const found: Violation[] = [];
  const startFits =
    Number.isInteger(start) &&
    (mode.starts === undefined ? start >= problem.from : inside(mode.starts, start)) &&
    (mode.calendar === undefined || inside(mode.calendar, start));
  if (!startFits) found.push({ rule: 'start', activities: [i], minute: start });
  if (end !== endOf(mode, start)) found.push({ rule: 'end', activities: [i], minute: end });
  if (end > problem.to) found.push({ rule: 'horizon', activities: [i], minute: end });
  return found;
}

/** When `mode` started at `start` ends; `undefined` if its calendar runs out before. */
export function endOf(mode: Mode, start: Minute): Minute | undefined {
  if (mode.calendar === undefined || mode.duration === 0) return start + mode.duration;
  let left = mode.duration;
  for (const span of mode.calendar) {
    const open = Math.max(start, span.start);
    if (open >= span.end) continue;
    if (span.end - open >= left) return open + left;
    left -= span.end - open;
  }
  return undefined;
}

/** The minute of `point` of activity `i`. */
export function pointOf(schedule: Schedule, i: number, point: Point): Minute {
  return at(point === 'start' ? schedule.starts : schedule.ends, i);
}

/** `map.at(t)`, a plain number being a shift by as many minutes. */
export function imageOf(map: TimeMap | number, t: Minute): Minute {
  return typeof map === 'number' ? t + map : map.at(t);
}

/** Does every condition of `lag` hold for these modes? */
export function isActive(lag: Lag, modes: ArrayLike<number>): boolean {
  return (lag.when ?? []).every((condition) => condition.modes.includes(at(modes, condition.activity)));
}

function lagHolds(lag: Lag, schedule: Schedule): boolean {
  if (!isActive(lag, schedule.modes)) return true;
  const a = pointOf(schedule, lag.from, lag.fromPoint);
  const b = pointOf(schedule, lag.to, lag.toPoint);
  if (lag.least !== undefined && imageOf(lag.least, a) > b) return false;
  return lag.most === undefined || b <= imageOf(lag.most, a);
}

/** Until when `use`, belonging to activity `i`, keeps its resource. */
export function usedUntil(use: Use, schedule: Schedule, i: number): Minute {
  const end = at(schedule.ends, i);
  const hold = use.hold;
  if (hold === undefined) return end;
  const byMap = hold.kind === 'next' ? Infinity : hold.map.at(end);
  const byNext = hold.kind === 'map' ? Infinity : at(schedule.starts, hold.next);
  return Math.max(end, Math.min(byMap, byNext));
}

function sameResourceViolations(problem: Problem, schedule: Schedule): Violation[] {
  return problem.activities.flatMap((_, i) =>
    modeOf(problem, schedule, i).uses.flatMap((use): Violation[] => {
      const hold = use.hold;
      if (hold?.kind !== 'mapOrNext') return [];
      if (at(schedule.starts, hold.next) >= hold.map.at(at(schedule.ends, i))) return [];
      const same = modeOf(problem, schedule, hold.next).uses.some((other) => other.resource === use.resource);
      return same ? [] : [{ rule: 'sameResource', activities: [i, hold.next], resource: use.resource }];
    }),
  );
}

function capacityViolations(problem: Problem, schedule: Schedule): Violation[] {
  const byResource = problem.resources.map((): Stretch[] => []);
  problem.activities.forEach((_, i) => {
    for (const use of modeOf(problem, schedule, i).uses)
      at(byResource, use.resource).push({
        activity: i,
        from: at(schedule.starts, i),
        until: usedUntil(use, schedule, i),
        units: use.units,
      });
  });
  return byResource.flatMap((stretches, resource): Violation[] => {
    const over = firstOverload(stretches, at(problem.resources, resource).capacity);
    return over === undefined ? [] : [{ rule: 'capacity', resource, ...over }];
  });
}

function firstOverload(
  stretches: readonly Stretch[],
  capacity: number,
): { minute: Minute; activities: number[] } | undefined {
  const changes = stretches
    .filter((s) => s.from < s.until)
    .flatMap((s) => [
      { minute: s.from, units: s.units },
      { minute: s.until, units: -s.units },
    ])
    .sort((a, b) => a.minute - b.minute || a.units - b.units);
  let level = 0;
  for (const { minute, units } of changes) {
    level += units;
    if (level > capacity) {
      const activities = stretches.filter((s) => s.from <= minute && minute < s.until).map((s) => s.activity);
      return { minute, activities };
    }
  }
  return undefined;
}

function exclusionViolations(problem: Problem, schedule: Schedule): Violation[] {
  const sides = Array.from({ length: problem.exclusions }, (): [Stretch[], Stretch[]] => [[], []]);
  problem.activities.forEach((_, i) => {
    for (const presence of modeOf(problem, schedule, i).presences ?? []) {
      const from = at(schedule.starts, i);
      const end = at(schedule.ends, i);
      const until = presence.until === undefined ? end : Math.max(end, presence.until.at(end));
      if (from < until) at(sides, presence.exclusion)[presence.side].push({ activity: i, from, until, units: 1 });
    }
  });
  return sides.flatMap(([wet, dusty], exclusion) =>
    clashes(wet, dusty).map((pair): Violation => ({ rule: 'exclusion', exclusion, activities: pair })),
  );
}

/** Pairs of a stretch of `one` and a stretch of `other` that share a minute. */
function clashes(one: readonly Stretch[], other: readonly Stretch[]): number[][] {
  const all = [...one.map((s) => ({ ...s, side: 0 })), ...other.map((s) => ({ ...s, side: 1 }))];
  all.sort((a, b) => a.from - b.from);
  let open: typeof all = [];
  const found: number[][] = [];
  for (const stretch of all) {
    open = open.filter((s) => s.until > stretch.from);
    for (const s of open) if (s.side !== stretch.side) found.push([s.activity, stretch.activity]);
    open.push(stretch);
  }
  return found;
}

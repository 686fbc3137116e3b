import { at } from '../at.ts';
import type { Minute } from '../time/span.ts';
import { NEVER } from '../time/time-map.ts';
import type { NetMode } from './net.ts';
import { presenceEnd, type Plan } from './plan.ts';
import { int } from '../typed.ts';

/**
 * First start from `floor` up to `limit` at which mode `m` finds its resources and its exclusions free, others staying
 * where they are; NEVER if there is none.
 */
export function seek(plan: Plan, m: number, floor: Minute, limit: Minute): Minute {
  const mode = at(plan.net.modes, m);
  let start = mode.slots.fit(floor);
  while (start <= limit && start !== NEVER) {
    const free = freeFrom(plan, mode, start, mode.slots.end(start));
    if (free === start) return start;
    start = mode.slots.fit(free);
  }
  return NEVER;
}

/** `start` itself if `mode` can run from `start` to `end`; else a later minute before which no start can succeed. */
function freeFrom(plan: Plan, mode: NetMode, start: Minute, end: Minute): Minute {
  for (const use of mode.uses) {
    const until = plan.holdEnd(use, end);
    if (until <= start) continue;
    const units = mode.sharesResource ? unitsUntil(plan, mode, use.resource, until, end) : use.units;
    const room = int(plan.net.capacity, use.resource) - units;
    if (room < 0) return mode.sharesResource ? start + 1 : NEVER;
    const free = at(plan.inUse, use.resource).freeFrom(start, until, room);
    if (free !== start) return free;
  }
  for (const presence of mode.presences) {
    const until = presenceEnd(presence, end);
    const free = plan.side(presence, presence.side === 0 ? 1 : 0).freeFrom(start, until, 0);
    if (free !== start) return free;
  }
  return mode.selfChecks && !agreesWithItself(plan, mode, start, end) ? start + 1 : start;
}

/** Units of `resource` that the uses of `mode` keep until `until` or longer. */
function unitsUntil(plan: Plan, mode: NetMode, resource: number, until: Minute, end: Minute): number {
  let units = 0;
  for (const use of mode.uses) if (use.resource === resource && plan.holdEnd(use, end) >= until) units += use.units;
  return units;
}

/** Checks lags from an activity to itself and presences of both sides of one exclusion. */
function agreesWithItself(plan: Plan, mode: NetMode, start: Minute, end: Minute): boolean {
  for (const presence of mode.presences)
    for (const other of mode.presences)
      if (
        other.exclusion === presence.exclusion &&
        other.side !== presence.side &&
        presenceEnd(presence, end) > start &&
        presenceEnd(other, end) > start
      )
        return false;
  for (const lag of at(plan.net.touching, mode.activity)) {
    if (lag.from !== mode.activity || lag.to !== mode.activity) continue;
    const holds = lag.when.every((condition) => {
      const m = condition.activity === mode.activity ? mode.index : int(plan.modes, condition.activity);
      return m >= 0 && condition.allowed[m - int(plan.net.modeFirst, condition.activity)] === 1;
    });
    const a = lag.fromEnd ? end : start;
    const b = lag.toEnd ? end : start;
    if (holds && ((lag.least !== undefined && lag.least.at(a) > b) || (lag.most !== undefined && b > lag.most.at(a))))
      return false;
  }
  return true;
}

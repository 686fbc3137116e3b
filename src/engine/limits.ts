import { at } from '../at.ts';
import type { Minute } from '../time/span.ts';
import { ALWAYS, NEVER } from '../time/time-map.ts';
import type { Labels } from './labels.ts';
import type { NetLag, NetUse } from './net.ts';
import { holdKinds } from './net.ts';
import type { Plan } from './plan.ts';
import { byte, int } from '../typed.ts';

/** Between which starts an activity may lie in one mode, as the activities already placed demand. */
export interface Limits {
  floor: Minute;
  limit: Minute;
  /** The lag behind `limit`, where it is one. */
  lag: NetLag | undefined;
  /** The hold behind `limit`, where it is one: the activity's own, or one that lasts until it starts. */
  hold: NetUse | undefined;
}

/** Limits to be filled. */
export function newLimits(): Limits {
  return { floor: ALWAYS, limit: NEVER, lag: undefined, hold: undefined };
}

/** Fills `limits` for mode `m` of activity `i`, which is not placed. */
export function limitsFor(plan: Plan, labels: Labels, i: number, m: number, limits: Limits): void {
  limits.floor = labels.first(m);
  limits.limit = labels.last(m);
  limits.lag = undefined;
  limits.hold = undefined;
  for (const lag of at(plan.net.touching, i)) {
    if (lag.from === lag.to && lag.from === i) continue;
    if (lag.from !== i && !plan.isPlaced(lag.from)) continue;
    if (lag.to !== i && !plan.isPlaced(lag.to)) continue;
    if (!isActive(plan, lag, i, m)) continue;
    if (lag.from === i) beforeOther(plan, lag, m, limits);
    else if (lag.to === i) afterOther(plan, lag, m, limits);
    else if (isBroken(plan, lag)) lower(limits, ALWAYS, lag, undefined);
  }
  byHolds(plan, i, m, limits);
}

/** Does every condition of `lag` hold if `i` takes mode `m`? An activity not placed yet fulfils no condition. */
export function isActive(plan: Plan, lag: NetLag, i: number, m: number): boolean {
  for (const condition of lag.when) {
    const mode = condition.activity === i ? m : int(plan.modes, condition.activity);
    if (mode < 0) return false;
    if (byte(condition.allowed, mode - int(plan.net.modeFirst, condition.activity)) === 0) return false;
  }
  return true;
}

/** Do the places of both ends of `lag` break it? */
export function isBroken(plan: Plan, lag: NetLag): boolean {
  const a = int(lag.fromEnd ? plan.ends : plan.starts, lag.from);
  const b = int(lag.toEnd ? plan.ends : plan.starts, lag.to);
  return (lag.least !== undefined && lag.least.at(a) > b) || (lag.most !== undefined && b > lag.most.at(a));
}

function afterOther(plan: Plan, lag: NetLag, m: number, limits: Limits): void {
  const slots = at(plan.net.modes, m).slots;
  const a = int(lag.fromEnd ? plan.ends : plan.starts, lag.from);
  if (lag.least !== undefined) {
    const floor = lag.least.at(a);
    limits.floor = Math.max(limits.floor, lag.toEnd ? slots.earliestStart(floor) : floor);
  }
  if (lag.most !== undefined) {
    const limit = lag.most.at(a);
    lower(limits, lag.toEnd ? slots.latestStart(limit) : limit, lag, undefined);
  }
}

function beforeOther(plan: Plan, lag: NetLag, m: number, limits: Limits): void {
  const slots = at(plan.net.modes, m).slots;
  const b = int(lag.toEnd ? plan.ends : plan.starts, lag.to);
  if (lag.least !== undefined) {
    const limit = lag.least.latest(b);
    lower(limits, lag.fromEnd ? slots.latestStart(limit) : limit, lag, undefined);
  }
  if (lag.most !== undefined) {
    const floor = lag.most.earliest(b);
    limits.floor = Math.max(limits.floor, lag.fromEnd ? slots.earliestStart(floor) : floor);
  }
}

/** What is wet cannot be moved: who comes before the hold's map is over must use the same resource. */
function byHolds(plan: Plan, i: number, m: number, limits: Limits): void {
  const mode = at(plan.net.modes, m);
  for (const use of at(plan.net.heldUntil, i)) {
    if (use.kind !== holdKinds.mapOrNext || !plan.isHolding(use) || mode.usesResource.has(use.resource)) continue;
    if (use.map !== undefined) limits.floor = Math.max(limits.floor, use.map.at(int(plan.ends, use.activity)));
  }
  for (const use of mode.uses) {
    if (use.kind !== holdKinds.mapOrNext || !plan.isPlaced(use.next) || use.map === undefined) continue;
    if (at(plan.net.modes, int(plan.modes, use.next)).usesResource.has(use.resource)) continue;
    lower(limits, mode.slots.latestStart(use.map.latest(int(plan.starts, use.next))), undefined, use);
  }
}

/** Lowers the limit and notes what did so. */
export function lower(limits: Limits, limit: Minute, lag: NetLag | undefined, hold: NetUse | undefined): void {
  if (limit >= limits.limit) return;
  limits.limit = limit;
  limits.lag = lag;
  limits.hold = hold;
}

import { at } from '../at.ts';
import { NEVER } from '../time/time-map.ts';
import type { Minute } from '../time/span.ts';
import type { Labels } from './labels.ts';
import type { Net, NetLag, NetMode } from './net.ts';
import { firstFit, floorOf, openModes, type Wait, waitOf } from './waits.ts';
import type { Slots } from './slots.ts';

/** What follows a mode within a window that shuts, unless something is done between: when it can come at the earliest. */
export interface FollowUp {
  readonly activity: number;
  readonly wait: Wait;
  /** The lags whose windows shut. */
  readonly windows: readonly NetLag[];
}

/** Finds, once for every mode, what follows it. */
export function followUps(net: Net, labels: Labels): (mode: NetMode) => FollowUp | undefined {
  const known = new Map<number, FollowUp | undefined>();
  return (mode) => {
    if (known.has(mode.index)) return known.get(mode.index);
    const found = followUpOf(net, labels, mode);
    known.set(mode.index, found);
    return found;
  };
}

function followUpOf(net: Net, labels: Labels, mode: NetMode): FollowUp | undefined {
  const shutting = at(net.touching, mode.activity).find(
    (lag) =>
      lag.from === mode.activity &&
      lag.to !== mode.activity &&
      !lag.toEnd &&
      lag.most !== undefined &&
      lag.when.some((c) => c.activity !== mode.activity && c.activity !== lag.to),
  );
  if (shutting === undefined) return undefined;
  const activity = shutting.to;
  const wait = waitOf(net, labels, mode, openModes(net, labels, activity));
  const direct = wait.either.flatMap((ways) => ways.flatMap((way) => way.direct.lags));
  const windows = [...new Set(direct)].filter((lag) => lag.most !== undefined);
  return windows.length === 0 ? undefined : { activity, wait, windows };
}

/** When what follows could come if the mode ran from `start` to `end`; NEVER if it could not. */
export function reachOf({ wait }: FollowUp, start: Minute, end: Minute): Minute {
  return floorOf(wait, { first: start, last: start }, { first: end, last: end });
}

/** The first start after `start` with which what follows can come before a window shuts that is else shut by then; NEVER if there is none. */
export function startInTime({ wait, windows }: FollowUp, slots: Slots, start: Minute): Minute {
  const end = slots.end(start);
  let soonest: Minute = NEVER;
  for (const { fromEnd, most } of windows) {
    if (most === undefined) continue;
    const shut = most.at(fromEnd ? end : start);
    const next = firstFit(wait.slots, shut + 1);
    if (next === NEVER) continue;
    const point = most.earliest(next);
    const later = fromEnd ? slots.earliestStart(point) : slots.fit(point);
    if (later > start) soonest = Math.min(soonest, later);
  }
  return soonest;
}

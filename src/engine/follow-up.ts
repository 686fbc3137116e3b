import { at } from '../at.ts';
import { ALWAYS, NEVER } from '../time/time-map.ts';
import type { Minute } from '../time/span.ts';
import type { Labels } from './labels.ts';
import type { Net, NetLag, NetMode } from './net.ts';
import { firstFit, floorOf, openModes, type Wait, waitOf } from './waits.ts';
import type { Slots } from './slots.ts';
import { int } from '../typed.ts';

/** What follows a mode within a window that shuts, unless something is done between: when it can come at the earliest. */
export interface FollowUp {
  readonly activity: number;
  readonly wait: Wait;
  /** The lags whose windows shut. */
  readonly windows: readonly NetLag[];
  readonly slots: Slots;
  /** By start of the mode, as far as it was asked for of late. */
  readonly known: Known;
}

/** What was asked for of late, by the last digits of a start: the same starts are asked for over and over. */
interface Known {
  readonly starts: Int32Array;
  readonly reaches: Int32Array;
  readonly later: Int32Array;
}

/** How many are known of one mode: a power of two. */
const knownEach = 128;

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
  if (windows.length === 0) return undefined;
  const known = {
    starts: new Int32Array(knownEach).fill(ALWAYS),
    reaches: new Int32Array(knownEach),
    later: new Int32Array(knownEach),
  };
  return { activity, wait, windows, slots: mode.slots, known };
}

/** When what follows could come if the mode started at `start`; NEVER if it could not. */
export function reachOf(follow: FollowUp, start: Minute): Minute {
  return int(follow.known.reaches, lookUp(follow, start));
}

/** The first start after `start` with which what follows can come before a window shuts that is else shut by then; NEVER if there is none. */
export function startInTime(follow: FollowUp, start: Minute): Minute {
  return int(follow.known.later, lookUp(follow, start));
}

/** The place among the known of what is asked for `start`. */
function lookUp(follow: FollowUp, start: Minute): number {
  const { wait, slots, known } = follow;
  const k = start & (knownEach - 1);
  if (int(known.starts, k) === start) return k;
  const end = slots.end(start);
  known.starts[k] = start;
  known.reaches[k] = floorOf(wait, { first: start, last: start }, { first: end, last: end });
  known.later[k] = laterInTime(follow, start, end);
  return k;
}

function laterInTime({ wait, windows, slots }: FollowUp, start: Minute, end: Minute): Minute {
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

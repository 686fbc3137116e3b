import { int } from '../../typed.ts';
import { roomFor } from './ints.ts';
import type { Model } from './model.ts';

/**
 * What is sure to be used of each resource in each period: an activity runs for certain from its latest start to its
 * earliest end. Kept up step by step, and taken back with the search.
 */
export interface Profile {
  readonly activities: number;
  readonly periods: number;
  readonly duration: Int32Array;
  readonly capacity: Int32Array;
  /** usage[r * periods + t]. */
  readonly usage: Int32Array;
  /** Needs of activity i: places needFirst[i] .. needFirst[i + 1] - 1 of the next three. */
  readonly needFirst: Int32Array;
  readonly needActivity: Int32Array;
  readonly needResource: Int32Array;
  readonly needUnits: Int32Array;
  /** Users of resource r, the greediest first: places userFirst[r] .. userFirst[r + 1] - 1 of the next two. */
  readonly userFirst: Int32Array;
  readonly userActivity: Int32Array;
  readonly userUnits: Int32Array;
  /** Sure part of each activity as entered in `usage`; none if from >= until. */
  readonly from: Int32Array;
  readonly until: Int32Array;
  /** Sure part at level 0, and how many users of each resource have one. */
  readonly rootFrom: Int32Array;
  readonly rootUntil: Int32Array;
  readonly rootUsers: Int32Array;
  /** Triples (activity, from, until) to go back to. */
  undo: Int32Array;
  undoSize: number;
  undoStart: Int32Array;
  /** Activities to look at, and which side of each. */
  readonly waiting: Int32Array;
  waitingSize: number;
  readonly sides: Int32Array;
}

export const LOWER = 1;
export const UPPER = 2;

export function createProfile(model: Model, periods: number): Profile {
  const { activities } = model;
  const flat = model.needs.flatMap((needs, activity) => needs.map((need) => ({ activity, ...need })));
  const users = flat.toSorted((a, b) => a.resource - b.resource || b.units - a.units || a.activity - b.activity);
  const starts = (rows: number, keys: readonly number[]) => {
    const first = new Int32Array(rows + 1);
    for (const key of keys) first[key + 1] = int(first, key + 1) + 1;
    for (let i = 0; i < rows; i++) first[i + 1] = int(first, i + 1) + int(first, i);
    return first;
  };
  const byActivity = flat.map((need) => need.activity);
  const byResource = users.map((need) => need.resource);
  return {
    activities,
    periods,
    duration: model.duration,
    capacity: model.capacity,
    usage: new Int32Array(model.capacity.length * periods),
    needFirst: starts(activities, byActivity),
    needActivity: Int32Array.from(byActivity),
    needResource: Int32Array.from(flat, (need) => need.resource),
    needUnits: Int32Array.from(flat, (need) => need.units),
    userFirst: starts(model.capacity.length, byResource),
    userActivity: Int32Array.from(users, (need) => need.activity),
    userUnits: Int32Array.from(users, (need) => need.units),
    from: new Int32Array(activities),
    until: new Int32Array(activities),
    rootFrom: new Int32Array(activities),
    rootUntil: new Int32Array(activities),
    rootUsers: new Int32Array(model.capacity.length),
    undo: new Int32Array(3 * 64),
    undoSize: 0,
    undoStart: new Int32Array(64),
    waiting: new Int32Array(activities),
    waitingSize: 0,
    sides: new Int32Array(activities),
  };
}

/** `bound` of an activity has risen. */
export function noticeRise(p: Profile, bound: number): void {
  const activity = bound >> 1;
  if (int(p.needFirst, activity) < int(p.needFirst, activity + 1))
    queue(p, activity, (bound & 1) === 0 ? LOWER : UPPER);
}

export function queue(p: Profile, activity: number, sides: number): void {
  const already = int(p.sides, activity);
  if (already === 0) {
    p.waiting[p.waitingSize] = activity;
    p.waitingSize += 1;
  }
  p.sides[activity] = already | sides;
}

/** What is sure now, at level 0, is sure for good. */
export function settleProfileRoot(p: Profile): void {
  p.rootFrom.set(p.from);
  p.rootUntil.set(p.until);
  p.rootUsers.fill(0);
  p.needResource.forEach((resource, k) => {
    const activity = int(p.needActivity, k);
    if (int(p.from, activity) < int(p.until, activity)) p.rootUsers[resource] = int(p.rootUsers, resource) + 1;
  });
}

export function forgetWaiting(p: Profile): void {
  for (let k = 0; k < p.waitingSize; k++) p.sides[int(p.waiting, k)] = 0;
  p.waitingSize = 0;
}

export function openProfileLevel(p: Profile, level: number): void {
  p.undoStart = roomFor(p.undoStart, level + 1);
  p.undoStart[level] = p.undoSize;
}

/** Takes back the sure parts entered above `level`, which is below the present one. */
export function undoProfileTo(p: Profile, level: number): void {
  const keep = int(p.undoStart, level + 1);
  const { undo, from, until } = p;
  for (let k = p.undoSize - 3; k >= keep; k -= 3) {
    const activity = int(undo, k);
    const oldFrom = int(undo, k + 1);
    const oldUntil = int(undo, k + 2);
    const nowFrom = int(from, activity);
    const nowUntil = int(until, activity);
    if (oldFrom >= oldUntil) enter(p, activity, nowFrom, nowUntil, -1);
    else {
      enter(p, activity, nowFrom, oldFrom, -1);
      enter(p, activity, oldUntil, nowUntil, -1);
    }
    from[activity] = oldFrom;
    until[activity] = oldUntil;
  }
  p.undoSize = keep;
  forgetWaiting(p);
}

/** Adds (sign 1) or takes away (-1) the needs of `activity` over [begin, end). */
export function enter(p: Profile, activity: number, begin: number, end: number, sign: number): void {
  const { usage, periods } = p;
  const last = int(p.needFirst, activity + 1);
  for (let k = int(p.needFirst, activity); k < last; k++) {
    const row = int(p.needResource, k) * periods;
    const units = sign * int(p.needUnits, k);
    for (let t = row + begin; t < row + end; t++) usage[t] = int(usage, t) + units;
  }
}

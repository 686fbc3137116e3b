import { get, roomFor } from './ints.ts';
import type { Model } from './model.ts';
import { addConflict, BY_PROFILE, high, low, note, raise } from './store.ts';
import type { Store } from './store.ts';

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
  /** Needs of activity i: places needFirst[i] .. needFirst[i + 1] - 1 of the next two. */
  readonly needFirst: Int32Array;
  readonly needResource: Int32Array;
  readonly needUnits: Int32Array;
  /** Users of resource r, the greediest first: places userFirst[r] .. userFirst[r + 1] - 1 of the next two. */
  readonly userFirst: Int32Array;
  readonly userActivity: Int32Array;
  readonly userUnits: Int32Array;
  /** Sure part of each activity as entered in `usage`; none if from >= until. */
  readonly from: Int32Array;
  readonly until: Int32Array;
  /** Triples (activity, from, until) to go back to. */
  undo: Int32Array;
  undoSize: number;
  undoStart: Int32Array;
  /** Activities to look at, and which side of each. */
  readonly waiting: Int32Array;
  waitingSize: number;
  readonly sides: Int32Array;
}

const LOWER = 1;
const UPPER = 2;

export function createProfile(model: Model, periods: number): Profile {
  const { activities } = model;
  const flat = model.needs.flatMap((needs, activity) => needs.map((need) => ({ activity, ...need })));
  const users = flat.toSorted((a, b) => a.resource - b.resource || b.units - a.units || a.activity - b.activity);
  const starts = (rows: number, keys: readonly number[]) => {
    const first = new Int32Array(rows + 1);
    for (const key of keys) first[key + 1] = get(first, key + 1) + 1;
    for (let i = 0; i < rows; i++) first[i + 1] = get(first, i + 1) + get(first, i);
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
    needResource: Int32Array.from(flat, (need) => need.resource),
    needUnits: Int32Array.from(flat, (need) => need.units),
    userFirst: starts(model.capacity.length, byResource),
    userActivity: Int32Array.from(users, (need) => need.activity),
    userUnits: Int32Array.from(users, (need) => need.units),
    from: new Int32Array(activities),
    until: new Int32Array(activities),
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
  if (get(p.needFirst, activity) < get(p.needFirst, activity + 1)) queue(p, activity, (bound & 1) === 0 ? LOWER : UPPER);
}

function queue(p: Profile, activity: number, sides: number): void {
  const already = get(p.sides, activity);
  if (already === 0) {
    p.waiting[p.waitingSize] = activity;
    p.waitingSize += 1;
  }
  p.sides[activity] = already | sides;
}

export function forgetWaiting(p: Profile): void {
  for (let k = 0; k < p.waitingSize; k++) p.sides[get(p.waiting, k)] = 0;
  p.waitingSize = 0;
}

export function openProfileLevel(p: Profile, level: number): void {
  p.undoStart = roomFor(p.undoStart, level + 1);
  p.undoStart[level] = p.undoSize;
}

/** Takes back the sure parts entered above `level`, which is below the present one. */
export function undoProfileTo(p: Profile, level: number): void {
  const keep = get(p.undoStart, level + 1);
  const { undo, from, until } = p;
  for (let k = p.undoSize - 3; k >= keep; k -= 3) {
    const activity = get(undo, k);
    const oldFrom = get(undo, k + 1);
    const oldUntil = get(undo, k + 2);
    const nowFrom = get(from, activity);
    const nowUntil = get(until, activity);
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
function enter(p: Profile, activity: number, begin: number, end: number, sign: number): void {
  const { usage, periods } = p;
  const last = get(p.needFirst, activity + 1);
  for (let k = get(p.needFirst, activity); k < last; k++) {
    const row = get(p.needResource, k) * periods;
    const units = sign * get(p.needUnits, k);
    for (let t = row + begin; t < row + end; t++) usage[t] = get(usage, t) + units;
  }
}

/** Enters new sure parts, then moves starts out of periods that are full. */
export function followProfile(s: Store, p: Profile): boolean {
  for (let k = p.waitingSize - 1; k >= 0; k--) if (!lengthenSurePart(s, p, get(p.waiting, k))) return false;
  for (let k = 0; k < p.waitingSize; k++) {
    const activity = get(p.waiting, k);
    const sides = get(p.sides, activity);
    p.sides[activity] = 0;
    if ((sides & LOWER) !== 0) moveLater(s, p, activity);
    if ((sides & UPPER) !== 0) moveEarlier(s, p, activity);
  }
  p.waitingSize = 0;
  return true;
}

function lengthenSurePart(s: Store, p: Profile, activity: number): boolean {
  const from = high(s, activity);
  const until = low(s, activity) + get(p.duration, activity);
  if (from >= until) return true;
  const oldFrom = get(p.from, activity);
  const oldUntil = get(p.until, activity);
  if (from === oldFrom && until === oldUntil) return true;
  p.undo = roomFor(p.undo, p.undoSize + 3);
  p.undo[p.undoSize] = activity;
  p.undo[p.undoSize + 1] = oldFrom;
  p.undo[p.undoSize + 2] = oldUntil;
  p.undoSize += 3;
  p.from[activity] = from;
  p.until[activity] = until;
  if (oldFrom >= oldUntil) {
    enter(p, activity, from, until, 1);
    return noticeUsage(s, p, activity, from, until);
  }
  enter(p, activity, from, oldFrom, 1);
  enter(p, activity, oldUntil, until, 1);
  return noticeUsage(s, p, activity, from, oldFrom) && noticeUsage(s, p, activity, oldUntil, until);
}

/** Usage has grown over [begin, end) by `activity`: is it too much, and whom does it push? */
function noticeUsage(s: Store, p: Profile, activity: number, begin: number, end: number): boolean {
  if (begin >= end) return true;
  const lastNeed = get(p.needFirst, activity + 1);
  for (let k = get(p.needFirst, activity); k < lastNeed; k++) {
    const resource = get(p.needResource, k);
    const capacity = get(p.capacity, resource);
    const row = resource * p.periods;
    let peak = 0;
    for (let t = row + begin; t < row + end; t++) {
      const used = get(p.usage, t);
      if (used > peak) {
        peak = used;
        if (used > capacity) return overloaded(s, p, resource, t - row);
      }
    }
    const lastUser = get(p.userFirst, resource + 1);
    for (let u = get(p.userFirst, resource); u < lastUser; u++) {
      if (get(p.userUnits, u) + peak <= capacity) break;
      const other = get(p.userActivity, u);
      const earliest = low(s, other);
      const latest = high(s, other);
      if (earliest === latest) continue;
      const duration = get(p.duration, other);
      let sides = 0;
      if (earliest < end && earliest + duration > begin) sides = LOWER;
      if (latest < end && latest + duration > begin) sides |= UPPER;
      if (sides !== 0) queue(p, other, sides);
    }
  }
  return true;
}

function overloaded(s: Store, p: Profile, resource: number, time: number): boolean {
  const begin = s.notesSize;
  const count = noteCulprits(s, p, resource, time, -1, get(p.capacity, resource));
  s.conflictSize = 0;
  for (let k = begin; k < begin + count; k++) addRunning(s, p, get(s.notes, k), time);
  s.notesSize = begin;
  return false;
}

/** Adds the two facts that make `activity` run in period `time` to the conflict. */
function addRunning(s: Store, p: Profile, activity: number, time: number): void {
  addConflict(s, 2 * activity, time + 1 - get(p.duration, activity));
  addConflict(s, 2 * activity + 1, -time);
}

/**
 * Writes activities, other than `but`, that run for certain in period `time` and together use more than `limit` of
 * the resource: first those that do so at level 0, which cost nothing, then few and large ones. Returns how many.
 */
function noteCulprits(s: Store, p: Profile, resource: number, time: number, but: number, limit: number): number {
  const first = get(p.userFirst, resource);
  const last = get(p.userFirst, resource + 1);
  const begin = s.notesSize;
  let sum = 0;
  for (let atRoot = 1; atRoot >= 0; atRoot--)
    for (let u = first; u < last && sum <= limit; u++) {
      const activity = get(p.userActivity, u);
      if (activity === but || get(p.from, activity) > time || get(p.until, activity) <= time) continue;
      if (runsAtRoot(s, p, activity, time) !== (atRoot === 1)) continue;
      note(s, activity);
      sum += get(p.userUnits, u);
    }
  return s.notesSize - begin;
}

function runsAtRoot(s: Store, p: Profile, activity: number, time: number): boolean {
  return (
    -get(s.root, 2 * activity + 1) <= time && get(s.root, 2 * activity) + get(p.duration, activity) > time
  );
}

/** Raises the earliest start past every period in which the activity does not fit beside what is sure. */
function moveLater(s: Store, p: Profile, activity: number): void {
  const duration = get(p.duration, activity);
  const firstNeed = get(p.needFirst, activity);
  const lastNeed = get(p.needFirst, activity + 1);
  const latest = high(s, activity);
  let k = firstNeed;
  while (k < lastNeed) {
    const start = low(s, activity);
    const resource = get(p.needResource, k);
    const limit = get(p.capacity, resource) - get(p.needUnits, k);
    const row = resource * p.periods;
    const end = Math.min(start + duration, latest);
    let t = end - 1;
    while (t >= start && get(p.usage, row + t) <= limit) t -= 1;
    if (t < start) k += 1;
    else {
      raise(s, 2 * activity, t + 1, BY_PROFILE, noteReason(s, p, resource, t, activity, limit), 0);
      k = firstNeed;
    }
  }
}

/** Lowers the latest start likewise. */
function moveEarlier(s: Store, p: Profile, activity: number): void {
  const duration = get(p.duration, activity);
  const firstNeed = get(p.needFirst, activity);
  const lastNeed = get(p.needFirst, activity + 1);
  const earliestEnd = low(s, activity) + duration;
  let k = firstNeed;
  while (k < lastNeed) {
    const end = high(s, activity) + duration;
    const resource = get(p.needResource, k);
    const limit = get(p.capacity, resource) - get(p.needUnits, k);
    const row = resource * p.periods;
    let t = Math.max(end - duration, earliestEnd);
    while (t < end && get(p.usage, row + t) <= limit) t += 1;
    if (t >= end) k += 1;
    else {
      raise(s, 2 * activity + 1, duration - t, BY_PROFILE, noteReason(s, p, resource, t, activity, limit), 0);
      k = firstNeed;
    }
  }
}

/** Reason: [period, first and last period in which the same activities are all sure to run, count, activities]. */
function noteReason(s: Store, p: Profile, resource: number, time: number, but: number, limit: number): number {
  const place = note(s, time);
  note(s, 0);
  note(s, 0);
  note(s, 0);
  const count = noteCulprits(s, p, resource, time, but, limit);
  let from = 0;
  let until = p.periods;
  for (let k = place + 4; k < place + 4 + count; k++) {
    const activity = get(s.notes, k);
    from = Math.max(from, get(p.from, activity));
    until = Math.min(until, get(p.until, activity));
  }
  s.notes[place + 1] = from;
  s.notes[place + 2] = until - 1;
  s.notes[place + 3] = count;
  return place;
}

/** Facts that made the profile raise `bound` to at least `value`, added to `conflict`. */
export function explainProfile(s: Store, p: Profile, bound: number, value: number, place: number): void {
  const { notes } = s;
  const activity = bound >> 1;
  const duration = get(p.duration, activity);
  let time = get(notes, place);
  if ((bound & 1) === 0) {
    time = Math.min(time, Math.max(value - 1, get(notes, place + 1)));
    addConflict(s, bound, time + 1 - duration);
  } else {
    time = Math.max(time, Math.min(duration - value, get(notes, place + 2)));
    addConflict(s, bound, -time);
  }
  const count = get(notes, place + 3);
  for (let k = place + 4; k < place + 4 + count; k++) addRunning(s, p, get(notes, k), time);
}

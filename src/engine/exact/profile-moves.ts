import { int } from '../../typed.ts';
import { roomFor } from './ints.ts';
import { enter, LOWER, queue, UPPER } from './profile.ts';
import type { Profile } from './profile.ts';
import { addRunning, noteCulprits, noteReason } from './profile-reasons.ts';
import { BY_PROFILE, high, low, raise } from './store.ts';
import type { Store } from './store.ts';

/** Enters new sure parts, then moves starts out of periods that are full. */
export function followProfile(s: Store, p: Profile): boolean {
  for (let k = p.waitingSize - 1; k >= 0; k--) if (!lengthenSurePart(s, p, int(p.waiting, k))) return false;
  for (let k = 0; k < p.waitingSize; k++) {
    const activity = int(p.waiting, k);
    const sides = int(p.sides, activity);
    p.sides[activity] = 0;
    if ((sides & LOWER) !== 0) moveLater(s, p, activity);
    if ((sides & UPPER) !== 0) moveEarlier(s, p, activity);
  }
  p.waitingSize = 0;
  return true;
}

function lengthenSurePart(s: Store, p: Profile, activity: number): boolean {
  const from = high(s, activity);
  const until = low(s, activity) + int(p.duration, activity);
  if (from >= until) return true;
  const oldFrom = int(p.from, activity);
  const oldUntil = int(p.until, activity);
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
  const lastNeed = int(p.needFirst, activity + 1);
  for (let k = int(p.needFirst, activity); k < lastNeed; k++) {
    const resource = int(p.needResource, k);
    const capacity = int(p.capacity, resource);
    const row = resource * p.periods;
    let peak = 0;
    for (let t = row + begin; t < row + end; t++) {
      const used = int(p.usage, t);
      if (used > peak) {
        peak = used;
        if (used > capacity) return overloaded(s, p, resource, t - row);
      }
    }
    const lastUser = int(p.userFirst, resource + 1);
    for (let u = int(p.userFirst, resource); u < lastUser; u++) {
      if (int(p.userUnits, u) + peak <= capacity) break;
      const other = int(p.userActivity, u);
      const earliest = low(s, other);
      const latest = high(s, other);
      if (earliest === latest) continue;
      const duration = int(p.duration, other);
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
  const count = noteCulprits(s, p, resource, time, -1, int(p.capacity, resource));
  s.conflictSize = 0;
  for (let k = begin; k < begin + count; k++) addRunning(s, p, int(s.notes, k), time);
  s.notesSize = begin;
  return false;
}

/** Raises the earliest start past every period in which the activity does not fit beside what is sure. */
function moveLater(s: Store, p: Profile, activity: number): void {
  const duration = int(p.duration, activity);
  const firstNeed = int(p.needFirst, activity);
  const lastNeed = int(p.needFirst, activity + 1);
  const latest = high(s, activity);
  let k = firstNeed;
  while (k < lastNeed) {
    const start = low(s, activity);
    const resource = int(p.needResource, k);
    const limit = int(p.capacity, resource) - int(p.needUnits, k);
    const row = resource * p.periods;
    const end = Math.min(start + duration, latest);
    let t = end - 1;
    while (t >= start && int(p.usage, row + t) <= limit) t -= 1;
    if (t < start) k += 1;
    else {
      raise(s, 2 * activity, t + 1, BY_PROFILE, noteReason(s, p, resource, t, activity, limit), 0);
      k = firstNeed;
    }
  }
}

/** Lowers the latest start likewise. */
function moveEarlier(s: Store, p: Profile, activity: number): void {
  const duration = int(p.duration, activity);
  const firstNeed = int(p.needFirst, activity);
  const lastNeed = int(p.needFirst, activity + 1);
  const earliestEnd = low(s, activity) + duration;
  let k = firstNeed;
  while (k < lastNeed) {
    const end = high(s, activity) + duration;
    const resource = int(p.needResource, k);
    const limit = int(p.capacity, resource) - int(p.needUnits, k);
    const row = resource * p.periods;
    let t = Math.max(end - duration, earliestEnd);
    while (t < end && int(p.usage, row + t) <= limit) t += 1;
    if (t >= end) k += 1;
    else {
      raise(s, 2 * activity + 1, duration - t, BY_PROFILE, noteReason(s, p, resource, t, activity, limit), 0);
      k = firstNeed;
    }
  }
}

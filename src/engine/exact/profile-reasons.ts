import { int } from '../../typed.ts';
import type { Profile } from './profile.ts';
import { addConflict, note } from './store.ts';
import type { Store } from './store.ts';

/** Adds the two facts that make `activity` run in period `time` to the conflict. */
export function addRunning(s: Store, p: Profile, activity: number, time: number): void {
  addConflict(s, 2 * activity, time + 1 - int(p.duration, activity));
  addConflict(s, 2 * activity + 1, -time);
}

/**
 * Writes activities, other than `but`, that run for certain in period `time` and together use more than `limit` of
 * the resource: first those that do so at level 0, which cost nothing, then few and large ones. Returns how many.
 */
export function noteCulprits(s: Store, p: Profile, resource: number, time: number, but: number, limit: number): number {
  const first = int(p.userFirst, resource);
  const last = int(p.userFirst, resource + 1);
  const begin = s.notesSize;
  let sum = 0;
  const rootUsers = int(p.rootUsers, resource);
  for (let u = first; u < last && rootUsers > 0 && sum <= limit; u++) {
    const activity = int(p.userActivity, u);
    if (activity === but || !runsAtRoot(p, activity, time)) continue;
    note(s, activity);
    sum += int(p.userUnits, u);
  }
  for (let u = first; u < last && sum <= limit; u++) {
    const activity = int(p.userActivity, u);
    if (activity === but || int(p.from, activity) > time || int(p.until, activity) <= time) continue;
    if (rootUsers > 0 && runsAtRoot(p, activity, time)) continue;
    note(s, activity);
    sum += int(p.userUnits, u);
  }
  return s.notesSize - begin;
}

function runsAtRoot(p: Profile, activity: number, time: number): boolean {
  return int(p.rootFrom, activity) <= time && int(p.rootUntil, activity) > time;
}

/** Reason: [period, first and last period in which the same activities are all sure to run, count, activities]. */
export function noteReason(s: Store, p: Profile, resource: number, time: number, but: number, limit: number): number {
  const place = note(s, time);
  note(s, 0);
  note(s, 0);
  note(s, 0);
  const count = noteCulprits(s, p, resource, time, but, limit);
  let from = 0;
  let until = p.periods;
  for (let k = place + 4; k < place + 4 + count; k++) {
    const activity = int(s.notes, k);
    from = Math.max(from, int(p.from, activity));
    until = Math.min(until, int(p.until, activity));
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
  const duration = int(p.duration, activity);
  let time = int(notes, place);
  if ((bound & 1) === 0) {
    time = Math.min(time, Math.max(value - 1, int(notes, place + 1)));
    addConflict(s, bound, time + 1 - duration);
  } else {
    time = Math.max(time, Math.min(duration - value, int(notes, place + 2)));
    addConflict(s, bound, -time);
  }
  const count = int(notes, place + 3);
  for (let k = place + 4; k < place + 4 + count; k++) addRunning(s, p, int(notes, k), time);
}

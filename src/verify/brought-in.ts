import type { AirSeries } from '../air/series.ts';
import type { Minute } from '../time/span.ts';
import { isRags, type Fact } from './fact.ts';
import { sectionOf, type Ground } from './ground.ts';

/** Work that stood in another room before, and when it is carried over. */
export interface BroughtIn {
  /** Id of that room, and its air. */
  readonly room: string;
  readonly from: AirSeries;
  readonly leaves: Minute;
}

/** The first minute from `minute` on at which somebody is there to carry, or is just about to lock up. */
function whenOpen(minute: Minute, { open }: Ground): Minute {
  const next = open.find((s) => s.end >= minute);
  return next === undefined ? Infinity : Math.max(next.start, minute);
}

/**
 * Where the work of `fact` was before, if that was another room. It is carried as soon as the step before is over, its films
 * there can be moved and the shop is open; what was done there last, and may stand there yet, not before now, or
 * before the plan that the shop follows had it carried.
 */
export function broughtIn(fact: Fact, ground: Ground): BroughtIn | undefined {
  const { bySection, situation, air } = ground;
  const own = (bySection.get(sectionOf(fact)) ?? []).filter((f) => !isRags(f));
  const before = own.filter((f) => f.end <= fact.start).sort((a, b) => a.start - b.start);
  const last = before.findLast((f) => f.station.room !== fact.station.room);
  if (last === undefined) return undefined;
  const from = air.get(last.station.room);
  if (from === undefined) return undefined;
  const there = before.filter((f) => f.station.room === last.station.room);
  const free = there.reduce((most, f) => Math.max(most, f.movableFrom), last.end);
  const done = situation.done.get(last.id);
  const mayStandThere = done !== undefined && own.every((f) => (situation.done.get(f.id)?.to ?? done.to) <= done.to);
  const since = situation.carried?.get(last.id) ?? situation.now;
  const leaves = whenOpen(mayStandThere ? Math.max(free, since) : free, ground);
  return { room: last.station.room, from, leaves };
}

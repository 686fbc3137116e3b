import { backFrom } from '../model/away.ts';
import { openSpans } from '../model/hours.ts';
import type { Situation } from '../model/situation.ts';
import { intersect, lengthOf, type Minute } from '../time/span.ts';
import { minuteAt } from '../time/zone.ts';

const MINUTES_PER_WEEK = 7 * 24 * 60;
/** Drying, not hands, fills a refinisher's calendar: even one piece takes weeks. */
const LEAST_WEEKS = 5;
/** Hands are never busy all the time: what dries, and what is cold, leaves gaps. */
const SLACK = 1.5;
const MOST_WEEKS = 260;
/** Days off further ahead than this say nothing of the work at hand. */
const MOST_WEEKS_OFF = 26;
/** Where no plan fits into the usual horizon, one this many times as long is tried. */
export const STRETCH = 4;

/** When pieces are back, and the last single days of rooms that can be had on some days only. */
function fixedDates({ book }: Situation): Minute[] {
  const { shop, pieces } = book;
  const days = shop.rooms.flatMap((room) => Object.keys(room.open?.days ?? {}));
  return [...pieces.flatMap((p) => backFrom(p) ?? []), ...days.map((day) => minuteAt(day, 24 * 60 - 1, shop.timeZone))];
}

/** The longest that any of the hands is off. */
function offAhead({ book, now }: Situation): number {
  const ahead = [{ start: now, end: now + MOST_WEEKS_OFF * MINUTES_PER_WEEK }];
  return Math.max(0, ...book.shop.hands.map((hand) => lengthOf(intersect(hand.off ?? [], ahead))));
}

/**
 * How far ahead to plan so that everything fits: by the work left against the hours that the hands have. `stretch` times as
 * many weeks where that was not enough.
 */
export function horizonOf(situation: Situation, stretch = 1): Minute {
  const { book, now, tasks, done } = situation;
  const { shop } = book;
  const slowest = Math.max(1, ...[...situation.paces.values()].map((pace) => pace.factor));
  const left = tasks
    .filter((t) => !done.has(t.id))
    .reduce((sum, t) => sum + Math.max(...t.ways.map((w) => w.workMinutes)) * slowest * t.people, 0);
  const sample = 4;
  const weekly = shop.hands.reduce(
    (sum, hand) => sum + lengthOf(openSpans(hand.hours, shop.timeZone, now, now + sample * MINUTES_PER_WEEK)) / sample,
    0,
  );
  const weeks = weekly === 0 ? MOST_WEEKS : LEAST_WEEKS + Math.ceil((SLACK * left) / weekly);
  const arrivals = book.pieces.map((p) => Math.max(0, (p.arrives ?? now) - now));
  const fixed = fixedDates(situation).map((t) => Math.max(0, t - now));
  const slips = [...situation.notBefore.values()].map((t) => Math.max(0, t - now));
  return (
    now +
    Math.min(MOST_WEEKS, weeks * stretch) * MINUTES_PER_WEEK +
    Math.max(0, ...arrivals, ...slips, ...fixed) +
    offAhead(situation)
  );
}

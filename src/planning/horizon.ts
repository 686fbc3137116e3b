import { openSpans } from '../model/hours.ts';
import type { Situation } from '../model/situation.ts';
import { lengthOf, type Minute } from '../time/span.ts';

const MINUTES_PER_WEEK = 7 * 24 * 60;
/** Drying, not hands, fills a refinisher's calendar: even one piece takes weeks. */
const LEAST_WEEKS = 5;
/** Hands are never busy all the time: what dries, and what is cold, leaves gaps. */
const SLACK = 1.5;
const MOST_WEEKS = 260;
/** Where no plan fits into the usual horizon, one this many times as long is tried. */
export const STRETCH = 4;

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
  const slips = [...situation.notBefore.values()].map((t) => Math.max(0, t - now));
  return now + Math.min(MOST_WEEKS, weeks * stretch) * MINUTES_PER_WEEK + Math.max(0, ...arrivals, ...slips);
}

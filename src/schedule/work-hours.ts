import { at } from '../at.ts';
import { freeSpans, openSpans } from '../model/hours.ts';
import type { Shop } from '../model/shop.ts';
import { intersect, type Minute, type Span, type Spans } from '../time/span.ts';

/** Where a set of hands can work together: the shop open, and all of them there. */
export interface WorkHours {
  ofHands(hands: readonly string[]): Spans;
}

export function workHours(shop: Shop, from: Minute, to: Minute): WorkHours {
  const opening = openSpans(shop.opening, shop.timeZone, from, to);
  const single = new Map(shop.hands.map((hand) => [hand.id, intersect(opening, freeSpans(shop, hand, from, to))]));
  const together = new Map<string, Spans>();
  return {
    ofHands(hands) {
      const key = hands.join('\n');
      const known = together.get(key);
      if (known !== undefined) return known;
      const spans = hands.reduce<Spans>((left, id) => intersect(left, single.get(id) ?? []), opening);
      together.set(key, spans);
      return spans;
    },
  };
}

/** The starts from which `minutes` of work fit without a break. */
export function unbrokenStarts(hours: Spans, minutes: number): Spans {
  return hours.flatMap((s): Span[] =>
    s.end - minutes >= s.start ? [{ start: s.start, end: s.end - minutes + 1 }] : [],
  );
}

/** Nobody begins a job in the last minutes of the day: the first stretch of work is at least this long. */
const LEAST_STRETCH_MINUTES = 15;

/** The starts of work that may pause. */
export function pausingStarts(hours: Spans, minutes: number): Spans {
  return unbrokenStarts(hours, Math.min(minutes, LEAST_STRETCH_MINUTES));
}

/** The last start from which `minutes` of `hours` are over by `end`. */
export function latestStart(hours: Spans, end: Minute, minutes: number): Minute {
  let left = minutes;
  for (let i = hours.length - 1; i >= 0; i -= 1) {
    const span = at(hours, i);
    if (span.start >= end) continue;
    const to = Math.min(span.end, end);
    if (to - span.start >= left) return to - left;
    left -= to - span.start;
  }
  return Number.NEGATIVE_INFINITY;
}

/** The first minute by which `minutes` of `hours` have passed since `start`. */
export function endOfWork(hours: Spans, start: Minute, minutes: number): Minute {
  let left = minutes;
  for (const span of hours) {
    if (span.end <= start) continue;
    const from = Math.max(span.start, start);
    if (span.end - from >= left) return from + left;
    left -= span.end - from;
  }
  return Number.POSITIVE_INFINITY;
}

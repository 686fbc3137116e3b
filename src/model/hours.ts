import { oncePer } from '../once-per.ts';
import { subtract, unite, type Minute, type Span, type Spans } from '../time/span.ts';
import { localDays, minuteAt, type LocalDay } from '../time/zone.ts';
import { weekdays, type ClockSpan, type Hand, type Hours, type Shop } from './shop.ts';

/** The spans of a day: its own, or else those of its weekday. */
export function spansOn(hours: Hours, { date, weekday }: Pick<LocalDay, 'date' | 'weekday'>): readonly ClockSpan[] {
  const single = hours.days[date];
  if (single !== undefined) return single;
  const name = weekdays[weekday - 1];
  return name === undefined ? [] : hours.week[name];
}

const DAY = 24 * 60;

/** Asked again and again, for the same days and hours. */
const openOn = oncePer(
  (hours: Hours, { day, zone }: { readonly day: LocalDay; readonly zone: string }): Spans => {
    // On a day on which the clocks are not changed they go on from its start.
    const isPlain = day.end - day.start === DAY;
    const at = (clock: number): Minute => (isPlain ? day.start + clock : minuteAt(day.date, clock, zone));
    return spansOn(hours, day).map((s): Span => ({ start: at(s.from), end: s.to >= DAY ? day.end : at(s.to) }));
  },
  // A day of a zone is one and the same whenever it is asked for.
  ({ day }) => day,
);

/** The open minutes of `hours`, on the wall clock of `zone`, on all days that `from` to `to` touch. */
export function openSpans(hours: Hours, zone: string, from: Minute, to: Minute): Spans {
  return unite(localDays(from, to, zone).flatMap((day) => openOn(hours, { day, zone })));
}

/** When `hand` is free for work: its hours, without its days off and its appointments. */
export function freeSpans(shop: Shop, hand: Hand, from: Minute, to: Minute): Spans {
  const engaged = (shop.appointments ?? []).filter((a) => a.hands.includes(hand.id));
  return subtract(openSpans(hand.hours, shop.timeZone, from, to), unite([...(hand.off ?? []), ...engaged]));
}

import type { Units } from '../model/shop.ts';
import type { Minute, Span } from '../time/span.ts';
import { localDay, localTime, minuteAt } from '../time/zone.ts';
import { shortMonth, shortWeekday } from '../words/calendar-names.ts';
import { phrase, spokenCode, translated, worded } from '../words/worded.ts';

/** How one shop wants things said, and the moment from which "tomorrow" counts. */
export interface Manner {
  readonly now: Minute;
  /** IANA name. */
  readonly zone: string;
  readonly clock: 12 | 24;
  readonly units: Units;
  /** ISO 4217. */
  readonly currency: string;
}

function clockText(clock: number, manner: Manner): string {
  const hour = Math.floor(clock / 60);
  const minutes = String(clock % 60).padStart(2, '0');
  if (manner.clock === 24) return `${String(hour).padStart(2, '0')}:${minutes}`;
  const shown = `${hour % 12 === 0 ? 12 : hour % 12}:${minutes}`;
  return hour < 12 ? worded`${shown} am` : worded`${shown} pm`;
}

/** `08:30` or `8:30 am`; the second of two hours that the autumn change repeats says so. */
export function sayClock(minute: Minute, manner: Manner): string {
  const { date, clock } = localTime(minute, manner.zone);
  const again = minuteAt(date, clock, manner.zone) !== minute;
  return clockText(clock, manner) + (again ? worded` (second)` : '');
}

/** `Thu 14 Jan`, in a shop of US units `Thu Jan 14`; with the year where it is not the present one. */
export function sayDate(minute: Minute, manner: Manner): string {
  const { year, month, day, weekday } = localTime(minute, manner.zone);
  const monthFirst = manner.units === 'us' && spokenCode() === 'en';
  const inMonth = monthFirst ? `${shortMonth(month)} ${day}` : `${day} ${shortMonth(month)}`;
  const text = `${shortWeekday(weekday)} ${inMonth}`;
  if (year === localTime(manner.now, manner.zone).year) return text;
  return monthFirst ? `${text}, ${year}` : `${text} ${year}`;
}

const nearDays: readonly (readonly [number, string])[] = [
  [-1, phrase('yesterday')],
  [0, phrase('today')],
  [1, phrase('tomorrow')],
];

/** `today`, `tomorrow`, `yesterday`, else `Thu 14 Jan`. */
export function sayDay(minute: Minute, manner: Manner): string {
  const { date } = localTime(minute, manner.zone);
  const near = nearDays.find(([plus]) => localDay(manner.now, manner.zone, plus).date === date);
  return near === undefined ? sayDate(minute, manner) : translated(near[1]);
}

/** `tomorrow 08:30`, `Thu 14 Jan 16:05`. */
export function sayMoment(minute: Minute, manner: Manner): string {
  return `${sayDay(minute, manner)} ${sayClock(minute, manner)}`;
}

/** Is it the last minute of a day, as where something is wanted by a date alone? */
export function isEndOfDay(minute: Minute, { zone }: Manner): boolean {
  return minute + 1 === localDay(minute, zone, 0).end;
}

/** By when something is wanted: `Sat 20 Feb` where it is all of that day, else `sayMoment`. */
export function sayDeadline(by: Minute, manner: Manner): string {
  return isEndOfDay(by, manner) ? sayDay(by, manner) : sayMoment(by, manner);
}

/** As `sayMoment`; only the clock where it is on the day of `on`. */
export function sayMomentSeenOn(on: Minute, minute: Minute, manner: Manner): string {
  const sameDay = localTime(on, manner.zone).date === localTime(minute, manner.zone).date;
  return sameDay ? sayClock(minute, manner) : sayMoment(minute, manner);
}

/** `08:30–09:10`; an end at midnight is said as 24:00 on a 24-hour clock. */
export function sayClocks(span: Span, manner: Manner): string {
  const atMidnight = localTime(span.end, manner.zone).clock === 0 && manner.clock === 24;
  return `${sayClock(span.start, manner)}–${atMidnight ? '24:00' : sayClock(span.end, manner)}`;
}

/** `45 min`, `1 h 30 min`, `2 d 4 h`. */
export function sayLength(minutes: number): string {
  const whole = Math.round(minutes);
  const days = Math.floor(whole / 1440);
  const hours = Math.floor((whole % 1440) / 60);
  const parts = [
    days > 0 ? `${days} d` : '',
    hours > 0 ? `${hours} h` : '',
    days === 0 && (whole % 60 > 0 || whole === 0) ? worded`${whole % 60} min` : '',
  ];
  return parts.filter((p) => p !== '').join(' ');
}

/** Hours of work, which no day adds up to: `30 h 15 min`, `40 min`. */
export function sayWork(minutes: number): string {
  const whole = Math.round(minutes);
  const hours = Math.floor(whole / 60);
  if (hours === 0) return worded`${whole % 60} min`;
  return whole % 60 === 0 ? `${hours} h` : worded`${hours} h ${whole % 60} min`;
}

import { DateTime, IANAZone } from 'luxon';
import type { Minute } from './span.ts';

const MS_PER_MINUTE = 60_000;

/** A calendar day as a wall clock in `zone` shows it. `end` is the next day's start: 23, 24 or 25 hours later. */
export interface LocalDay {
  /** `2027-01-16` */
  readonly date: string;
  /** 1 Monday to 7 Sunday. */
  readonly weekday: number;
  readonly start: Minute;
  readonly end: Minute;
}

/** What a wall clock in `zone` shows. */
export interface LocalTime {
  readonly date: string;
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly weekday: number;
  /** Minutes after midnight as the clock shows them. */
  readonly clock: number;
  readonly offsetMinutes: number;
}

export function isZone(name: string): boolean {
  return IANAZone.create(name).isValid;
}

function toMinute(when: DateTime): Minute {
  return Math.floor(when.toMillis() / MS_PER_MINUTE);
}

function inZone(minute: Minute, zone: string): DateTime {
  return DateTime.fromMillis(minute * MS_PER_MINUTE, { zone, locale: 'en-GB' });
}

export function localTime(minute: Minute, zone: string): LocalTime {
  const when = inZone(minute, zone);
  return {
    date: when.toFormat('yyyy-MM-dd'),
    year: when.year,
    month: when.month,
    day: when.day,
    weekday: when.weekday,
    clock: when.hour * 60 + when.minute,
    offsetMinutes: when.offset,
  };
}

/** ISO 8601 with offset, to the minute: `2027-01-11T07:30:00+01:00`. */
export function isoOf(minute: Minute, zone: string): string {
  return inZone(minute, zone).toFormat("yyyy-MM-dd'T'HH:mm:ssZZ");
}

/**
 * The instant at which a wall clock shows `clock` minutes after midnight on `date`. A time that the spring change
 * skips is read as just as much later; one that the autumn change repeats, as the first.
 */
export function minuteAt(date: string, clock: number, zone: string): Minute {
  const [year, month, day] = date.split('-').map(Number);
  const when = DateTime.fromObject(
    { year, month, day, hour: Math.floor(clock / 60), minute: clock % 60 },
    { zone },
  );
  const first = when.getPossibleOffsets().reduce((a, b) => (b.toMillis() < a.toMillis() ? b : a), when);
  return toMinute(first);
}

/** The day that holds `minute`, `plus` days on. */
export function localDay(minute: Minute, zone: string, plus = 0): LocalDay {
  const start = inZone(minute, zone).startOf('day').plus({ days: plus }).startOf('day');
  return {
    date: start.toFormat('yyyy-MM-dd'),
    weekday: start.weekday,
    start: toMinute(start),
    end: toMinute(start.plus({ days: 1 }).startOf('day')),
  };
}

/** The days that `from` to `to` touch. */
export function localDays(from: Minute, to: Minute, zone: string): LocalDay[] {
  const days: LocalDay[] = [];
  for (let plus = 0; ; plus += 1) {
    const day = localDay(from, zone, plus);
    if (day.start >= to && days.length > 0) return days;
    days.push(day);
  }
}

export type ReadTime =
  | { readonly ok: true; readonly minute: Minute; readonly dateOnly: boolean; readonly notice?: string }
  | { readonly ok: false; readonly why: string };

const WRITTEN = /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::\d{2}(?:\.\d{1,3})?)?(Z|[+-]\d{2}:\d{2})?)?$/;

/**
 * Reads `2027-01-11`, `2027-01-11T07:30` (wall clock of `zone`) or a time with its own offset. A time that the clock
 * skips is refused with both readings; one that it shows twice is taken as the earlier, with a notice.
 */
export function readTime(written: string, zone: string): ReadTime {
  const text = written.trim();
  const parts = text.length <= 40 ? WRITTEN.exec(text) : null;
  if (parts === null)
    return { ok: false, why: 'write a date and time like 2027-01-11T07:30, or a date like 2027-01-11' };
  const [, year, month, day, hour, minute, offset] = parts;
  const stamp = DateTime.fromISO(text.replace(' ', 'T'), { zone });
  if (!stamp.isValid) return { ok: false, why: 'there is no such day or time' };
  if (stamp.year < 1970 || stamp.year > 2199) return { ok: false, why: 'the year must lie between 1970 and 2199' };
  if (offset !== undefined || hour === undefined)
    return { ok: true, minute: toMinute(stamp), dateOnly: hour === undefined };
  const shown = `${year ?? ''}-${month ?? ''}-${day ?? ''}T${hour}:${minute ?? ''}`;
  if (stamp.toFormat("yyyy-MM-dd'T'HH:mm") !== shown) {
    const skippedMinutes = stamp.offset - stamp.minus({ hours: 3 }).offset;
    const earlier = stamp.minus({ minutes: skippedMinutes });
    return {
      ok: false,
      why: `the clock skips that time; write ${earlier.toFormat('HH:mmZZ')} or ${stamp.toFormat('HH:mmZZ')} on that day`,
    };
  }
  const readings = stamp.getPossibleOffsets().sort((a, b) => a.toMillis() - b.toMillis());
  const first = readings[0] ?? stamp;
  if (readings.length < 2) return { ok: true, minute: toMinute(first), dateOnly: false };
  return {
    ok: true,
    minute: toMinute(first),
    dateOnly: false,
    notice: `the clock shows ${shown} twice that day; the first was taken (${first.toFormat('ZZ')})`,
  };
}

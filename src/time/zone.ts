import { DateTime, IANAZone } from 'luxon';
import type { Minute } from './span.ts';
import { worded } from '../words/worded.ts';

const MS_PER_MINUTE = 60_000;
const DAY = 1440;

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

/** Offsets of one zone, in minutes: asking the platform is slow, and in most weeks the answer is one for all hours. */
interface Offsets {
  readonly zone: () => IANAZone;
  /** Number of minutes in a stretch -> number of the stretch -> offset, or undefined where it changes within. */
  readonly of: ReadonlyMap<number, Map<number, number | undefined>>;
  /** By number, counted from 1970-01-01: the same ones are asked for by all who keep hours. */
  readonly days: Map<number, LocalDay>;
}

/**
 * No zone has changed its clocks and changed them back within a week: the shortest such spell, a fasting month, is four. In our
 * days they change on a half hour.
 */
const STRETCHES: readonly number[] = [7 * DAY, DAY, 30];

const offsetsOf = new Map<string, Offsets>();

/** The offset all through the stretch of so many minutes that holds `minute`; undefined where it changes within. */
function offsetThrough({ zone, of }: Offsets, minutes: number, minute: Minute): number | undefined {
  const known = of.get(minutes);
  const stretch = Math.floor(minute / minutes);
  if (known?.has(stretch) === true) return known.get(stretch);
  const first = zone().offset(stretch * minutes * MS_PER_MINUTE);
  const last = zone().offset(((stretch + 1) * minutes - 1) * MS_PER_MINUTE);
  const through = first === last ? first : undefined;
  known?.set(stretch, through);
  return through;
}

function offsetsIn(name: string): Offsets {
  let offsets = offsetsOf.get(name);
  if (offsets === undefined) {
    const of = new Map(STRETCHES.map((minutes) => [minutes, new Map<number, number | undefined>()]));
    offsetsOf.set(name, (offsets = { zone: () => IANAZone.create(name), of, days: new Map<number, LocalDay>() }));
  }
  return offsets;
}

function offsetAt(minute: Minute, name: string): number {
  const offsets = offsetsIn(name);
  for (const minutes of STRETCHES) {
    const through = offsetThrough(offsets, minutes, minute);
    if (through !== undefined) return through;
  }
  return offsets.zone().offset(minute * MS_PER_MINUTE);
}

/** What has been learned of a zone's offsets, by length of stretch: plain data, to be kept as long as the platform's zones are these. */
export type KnownOffsets = ReadonlyMap<number, ReadonlyMap<number, number | undefined>>;

/** The offsets all through `years`: week by week, and more closely where the clocks change. */
export function offsetsThrough(zone: string, years: { readonly from: number; readonly to: number }): KnownOffsets {
  const offsets = offsetsIn(zone);
  const start = Date.UTC(years.from, 0, 1) / MS_PER_MINUTE;
  const end = Date.UTC(years.to + 1, 0, 1) / MS_PER_MINUTE;
  const [longest = 0, ...closer] = STRETCHES;
  const ask = (from: Minute, minutes: number, [next, ...further]: readonly number[]): void => {
    if (offsetThrough(offsets, minutes, from) !== undefined || next === undefined) return;
    for (let part = from; part < from + minutes; part += next) ask(part, next, further);
  };
  for (let week = Math.floor(start / longest) * longest; week < end; week += longest) ask(week, longest, closer);
  return offsets.of;
}

/** Takes what was learned before, so that the platform need not be asked. */
export function recallOffsets(zone: string, known: KnownOffsets): void {
  for (const [minutes, own] of offsetsIn(zone).of)
    for (const [stretch, offset] of known.get(minutes) ?? []) own.set(stretch, offset);
}

function two(n: number): string {
  return String(n).padStart(2, '0');
}

/** The calendar date of a day number counted from 1970-01-01. */
function dateOfDay(day: number): { year: number; month: number; day: number; date: string; weekday: number } {
  const utc = new Date(day * DAY * MS_PER_MINUTE);
  const [year, month, dayOfMonth] = [utc.getUTCFullYear(), utc.getUTCMonth() + 1, utc.getUTCDate()];
  return {
    year,
    month,
    day: dayOfMonth,
    date: `${String(year).padStart(4, '0')}-${two(month)}-${two(dayOfMonth)}`,
    weekday: utc.getUTCDay() === 0 ? 7 : utc.getUTCDay(),
  };
}

export function localTime(minute: Minute, zone: string): LocalTime {
  const offsetMinutes = offsetAt(minute, zone);
  const shown = minute + offsetMinutes;
  const day = Math.floor(shown / DAY);
  return { ...dateOfDay(day), clock: shown - day * DAY, offsetMinutes };
}

/** ISO 8601 with offset, to the minute: `2027-01-11T07:30:00+01:00`. */
export function isoOf(minute: Minute, zone: string): string {
  const { date, clock, offsetMinutes } = localTime(minute, zone);
  const size = Math.abs(offsetMinutes);
  const offset = `${offsetMinutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
  return `${date}T${two(Math.floor(clock / 60))}:${two(clock % 60)}:00${offset}`;
}

/** The instant at which clocks show `shown`, minutes since 1970 on the wall: the first, or just after a skipped hour. */
function instantOf(shown: Minute, zone: string): Minute {
  const before = offsetAt(shown - DAY, zone);
  const after = offsetAt(shown + DAY, zone);
  // The earlier instant of the two readings is the one with the larger offset.
  for (const offset of [Math.max(before, after), Math.min(before, after)])
    if (offsetAt(shown - offset, zone) === offset) return shown - offset;
  return shown - before;
}

/**
 * The instant at which a wall clock shows `clock` minutes after midnight on `date`. A time that the spring change
 * skips is read as just as much later; one that the autumn change repeats, as the first.
 */
export function minuteAt(date: string, clock: number, zone: string): Minute {
  const [year = 0, month = 1, day = 1] = date.split('-').map(Number);
  return instantOf(Date.UTC(year, month - 1, day) / MS_PER_MINUTE + clock, zone);
}

/** First instant of a local day: midnight, or where clocks skip midnight the first minute after. */
function dayStart(day: number, zone: string): Minute {
  return instantOf(day * DAY, zone);
}

/** The day that holds `minute`, `plus` days on. */
export function localDay(minute: Minute, zone: string, plus = 0): LocalDay {
  const number = Math.floor((minute + offsetAt(minute, zone)) / DAY) + plus;
  const { days } = offsetsIn(zone);
  let day = days.get(number);
  if (day === undefined) {
    const { date, weekday } = dateOfDay(number);
    days.set(number, (day = { date, weekday, start: dayStart(number, zone), end: dayStart(number + 1, zone) }));
  }
  return day;
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
  | { readonly ok: false; readonly why: string; readonly skipped?: true };

const WRITTEN = /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::\d{2}(?:\.\d{1,3})?)?(Z|[+-]\d{2}:\d{2})?)?$/;

/** A time of a day on which the clocks stay as they are: nothing to ask about; undefined for any other, and for what is no time. */
function plainly(year: number, date: string, hour = '00', minute = '00', zone: string): Minute | undefined {
  const midnight = Date.parse(`${date}T00:00Z`) / MS_PER_MINUTE;
  if (Number.isNaN(midnight) || dateOfDay(midnight / DAY).date !== date || year < 1971 || year > 2198) return undefined;
  if (Number(hour) > 23 || Number(minute) > 59) return undefined;
  const shown = midnight + 60 * Number(hour) + Number(minute);
  const stays = offsetAt(shown - DAY, zone) === offsetAt(shown + DAY, zone);
  return stays ? instantOf(shown, zone) : undefined;
}

/**
 * Reads `2027-01-11`, `2027-01-11T07:30` (wall clock of `zone`) or a time with its own offset. A time that the clock
 * skips is refused with both readings; one that it shows twice is taken as the earlier, with a notice.
 */
export function readTime(written: string, zone: string): ReadTime {
  const text = written.trim();
  const parts = text.length <= 40 ? WRITTEN.exec(text) : null;
  if (parts === null)
    return { ok: false, why: worded`write a date and time like 2027-01-11T07:30, or a date like 2027-01-11` };
  const [, year, month, day, hour, minute, offset] = parts;
  const plain =
    offset === undefined
      ? plainly(Number(year), `${year ?? ''}-${month ?? ''}-${day ?? ''}`, hour, minute, zone)
      : undefined;
  if (plain !== undefined) return { ok: true, minute: plain, dateOnly: hour === undefined };
  const stamp = DateTime.fromISO(text.replace(' ', 'T'), { zone });
  if (!stamp.isValid)
    return { ok: false, why: worded`there is no such day or time; write one like 2027-01-11 or 2027-01-11T07:30` };
  if (stamp.year < 1970 || stamp.year > 2199)
    return { ok: false, why: worded`the year must lie between 1970 and 2199` };
  if (offset !== undefined || hour === undefined)
    return { ok: true, minute: toMinute(stamp), dateOnly: hour === undefined };
  const shown = `${year ?? ''}-${month ?? ''}-${day ?? ''}T${hour}:${minute ?? ''}`;
  if (stamp.toFormat("yyyy-MM-dd'T'HH:mm") !== shown) {
    const skippedMinutes = stamp.offset - stamp.minus({ hours: 3 }).offset;
    const earlier = stamp.minus({ minutes: skippedMinutes });
    return {
      ok: false,
      skipped: true,
      why: worded`the clock skips that time; write ${earlier.toFormat('HH:mmZZ')} or ${stamp.toFormat('HH:mmZZ')} on that day`,
    };
  }
  const readings = stamp.getPossibleOffsets().sort((a, b) => a.toMillis() - b.toMillis());
  const first = readings[0] ?? stamp;
  if (readings.length < 2) return { ok: true, minute: toMinute(first), dateOnly: false };
  return {
    ok: true,
    minute: toMinute(first),
    dateOnly: false,
    notice: worded`the clock shows ${shown} twice that day; the first was taken (${first.toFormat('ZZ')})`,
  };
}

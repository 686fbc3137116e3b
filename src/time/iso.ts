import type { Minute } from './span.ts';
import { isoOf, localTime } from './zone.ts';

const MS_PER_MINUTE = 60_000;
const DAY_MINUTES = 24 * 60;
const STAMP = /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d)(?::\d\d(?:\.\d{1,6})?)?(Z|[+-]\d\d:\d\d)?$/;

/** The parts of a written time, checked against the calendar. */
export interface WrittenTime {
  /** What a clock at UTC shows as the same. */
  readonly asIfUtc: Minute;
  readonly date: string;
  /** Minutes after midnight as written. */
  readonly clock: number;
  /** East of Greenwich; undefined where none is written. */
  readonly offsetMinutes: number | undefined;
}

function offsetIn(text: string | undefined): number | undefined {
  if (text === undefined || text === 'Z') return text === undefined ? undefined : 0;
  const minutes = Number(text.slice(1, 3)) * 60 + Number(text.slice(4, 6));
  return text.startsWith('-') ? -minutes : minutes;
}

/** Takes `2027-01-11T07:30`, with or without seconds and offset, apart; undefined where it is no time. Quick. */
export function writtenTime(text: string): WrittenTime | undefined {
  const parts = text.length > 40 ? null : STAMP.exec(text);
  if (parts === null) return undefined;
  const [, year, month, day, hour, minute, offset] = parts;
  const clock = Number(hour) * 60 + Number(minute);
  const midnight = Date.UTC(Number(year), Number(month) - 1, Number(day));
  const isDay = Number(month) <= 12 && new Date(midnight).getUTCDate() === Number(day) && midnight >= 0;
  if (!isDay || Number(hour) > 23 || Number(minute) > 59) return undefined;
  return {
    asIfUtc: midnight / MS_PER_MINUTE + clock,
    date: text.slice(0, 10),
    clock,
    offsetMinutes: offsetIn(offset),
  };
}

/** The instant of a time that has its own offset; undefined where it is no such time. */
export function minuteOfIso(text: string): Minute | undefined {
  const time = writtenTime(text);
  return time?.offsetMinutes === undefined ? undefined : time.asIfUtc - time.offsetMinutes;
}

function written(minute: Minute, offset: number): string {
  const shown = new Date((minute + offset) * MS_PER_MINUTE).toISOString().slice(0, 19);
  const two = (value: number) => String(value).padStart(2, '0');
  const away = Math.abs(offset);
  return `${shown}${offset < 0 ? '-' : '+'}${two(Math.floor(away / 60))}:${two(away % 60)}`;
}

/** `isoOf` for many times in one zone: the clock's offset is looked up once for each day that keeps it. */
export function isoWriter(zone: string): (minute: Minute) => string {
  const offsets = new Map<number, number | undefined>();
  const offsetOn = (day: number): number | undefined => {
    if (!offsets.has(day)) {
      const first = localTime(day * DAY_MINUTES, zone).offsetMinutes;
      const last = localTime((day + 1) * DAY_MINUTES, zone).offsetMinutes;
      offsets.set(day, first === last && Number.isInteger(first) ? first : undefined);
    }
    return offsets.get(day);
  };
  return (minute) => {
    const offset = offsetOn(Math.floor(minute / DAY_MINUTES));
    return offset === undefined ? isoOf(minute, zone) : written(minute, offset);
  };
}

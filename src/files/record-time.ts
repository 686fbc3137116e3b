import type { Minute } from '../time/span.ts';
import { localDay, minuteAt, readTime } from '../time/zone.ts';

const MS_PER_MINUTE = 60_000;
const STAMP = /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d)(?::\d\d(?:\.\d{1,6})?)?(Z|[+-]\d\d:\d\d)?$/;
const DAY_MINUTES = 24 * 60;

function offsetMinutes(offset: string): number {
  if (offset === 'Z') return 0;
  const minutes = Number(offset.slice(1, 3)) * 60 + Number(offset.slice(4, 6));
  return offset.startsWith('-') ? -minutes : minutes;
}

interface Day {
  readonly start: Minute;
  readonly minutes: number;
}

/**
 * Reads the times of a logger's record, row by row: a record has thousands, so each day is looked up once. Where the
 * clock shows an hour twice, the second time round is known by the order of the rows. Undefined: no time.
 */
export function recordClock(zone: string): (text: string, previous: Minute) => Minute | undefined {
  const days = new Map<string, Day>();
  const dayOf = (date: string): Day => {
    const known = days.get(date);
    if (known !== undefined) return known;
    const day = localDay(minuteAt(date, 12 * 60, zone), zone);
    const made = { start: day.start, minutes: day.end - day.start };
    days.set(date, made);
    return made;
  };
  return (text, previous) => {
    const parts = text.length > 40 ? null : STAMP.exec(text);
    if (parts === null) return undefined;
    const [, year, month, dayText, hourText, minuteText, offset] = parts;
    const clock = Number(hourText) * 60 + Number(minuteText);
    const utc = Date.UTC(Number(year), Number(month) - 1, Number(dayText));
    const isDay = utc >= 0 && new Date(utc).getUTCDate() === Number(dayText) && Number(month) <= 12;
    if (!isDay || clock >= DAY_MINUTES || Number(minuteText) > 59) return undefined;
    if (offset !== undefined) return utc / MS_PER_MINUTE + clock - offsetMinutes(offset);
    const day = dayOf(text.slice(0, 10));
    if (day.minutes === DAY_MINUTES) return day.start + clock;
    const time = readTime(text.slice(0, 16), zone);
    if (!time.ok) return undefined;
    const isSecondTimeRound = time.notice !== undefined && time.minute <= previous;
    return isSecondTimeRound ? time.minute + day.minutes - DAY_MINUTES : time.minute;
  };
}

import { writtenTime } from '../time/iso.ts';
import type { Minute } from '../time/span.ts';
import { localDay, minuteAt, readTime } from '../time/zone.ts';

const DAY_MINUTES = 24 * 60;

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
    const written = writtenTime(text);
    if (written === undefined) return undefined;
    if (written.offsetMinutes !== undefined) return written.asIfUtc - written.offsetMinutes;
    const day = dayOf(written.date);
    if (day.minutes === DAY_MINUTES) return day.start + written.clock;
    const time = readTime(text.slice(0, 16), zone);
    if (!time.ok) return undefined;
    const isSecondTimeRound = time.notice !== undefined && time.minute <= previous;
    return isSecondTimeRound ? time.minute + day.minutes - DAY_MINUTES : time.minute;
  };
}

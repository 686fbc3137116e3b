import type { Minute } from '../time/span.ts';
import { localDay, localTime } from '../time/zone.ts';

const DAY = 1440;

/** What a curve of the day needs to know of an instant. */
export interface ClockReading {
  /** Minutes after midnight as the clock shows them. */
  readonly clock: number;
  /** 0 at the middle of January to 11 at the middle of December, and on to 12. */
  readonly yearPosition: number;
}

/**
 * Reads the wall clock of `zone` quickly for many instants: the zone is asked once a day, and every minute only on the
 * two days a year on which the clock changes.
 */
export function clockReader(zone: string): (minute: Minute) => ClockReading {
  let day = { start: 0, end: 0, yearPosition: 0 };
  return (minute) => {
    if (minute < day.start || minute >= day.end) {
      const { start, end } = localDay(minute, zone);
      const { month, day: dayOfMonth } = localTime(start, zone);
      day = { start, end, yearPosition: (month - 1 + (dayOfMonth - 15) / 30.4 + 12) % 12 };
    }
    const changing = day.end - day.start !== DAY;
    return {
      clock: changing ? localTime(minute, zone).clock : minute - day.start,
      yearPosition: day.yearPosition,
    };
  };
}

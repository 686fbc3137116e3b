import { ALWAYS, NEVER, shift, type TimeMap } from '../time/time-map.ts';
import type { Minute } from '../time/span.ts';
import { oncePer } from '../once-per.ts';
import { DAY, type Dose } from './dose.ts';
import { firstDown, firstUp } from './first-minute.ts';

/** Less than this is no wait at all; it also keeps rounding from swallowing a wait. */
const LEAST_HOURS = 1e-6;

/** `firstUp` to the last minute, by the starts of the days: no day is looked into, or summed up, that does not have to be. */
function firstUpFrom(low: Minute, { record, last }: Dose, holds: (m: Minute) => boolean): Minute {
  let from = low;
  const days = Math.max(0, Math.floor((low - record.start) / DAY) + 1);
  for (let start = record.start + days * DAY; start <= record.end; start += DAY) {
    if (holds(start)) return firstUp(from, start, holds);
    from = start + 1;
  }
  return firstUp(from, last, holds);
}

/** The same, searching down to the beginning of all time. */
function firstDownFrom(high: Minute, { record }: Dose, holds: (m: Minute) => boolean): Minute {
  let to = high;
  const days = Math.floor((Math.min(high, record.end) - record.start) / DAY);
  for (let start = record.start + days * DAY; start >= record.start; start -= DAY) {
    if (!holds(start)) return firstDown(start, to, holds);
    to = start - 1;
  }
  return firstDown(ALWAYS, to, holds);
}

/**
 * When a film that was finished at `t` has gained `sheetHours`: the first whole minute at which it has, or NEVER. `latest`
 * and `earliest` are its exact inverses, because all three compare the same two sums. One map for one wait: what the search has
 * asked of it is remembered with it.
 */
export const reached: (dose: Dose, sheetHours: number) => TimeMap = oncePer(
  (dose: Dose, sheetHours: number): TimeMap => {
    if (sheetHours < LEAST_HOURS) return shift(0);
    // Sums of many minutes fall short of a whole number by a hair: that must not cost a minute.
    const hours = sheetHours - LEAST_HOURS / 2;
    const latest = (limit: Minute): Minute => {
      if (limit >= NEVER) return NEVER;
      const gained = dose.hoursAt(Math.min(limit, dose.last));
      const tooLate = (t: Minute): boolean => dose.hoursAt(t) + hours > gained;
      return firstDownFrom(Math.min(limit, dose.last), dose, tooLate) - 1;
    };
    return {
      at(t) {
        const goal = dose.hoursAt(t) + hours;
        const minute = firstUpFrom(t, dose, (m) => dose.hoursAt(m) >= goal);
        return minute > dose.last ? NEVER : minute;
      },
      latest: (limit) => Math.max(ALWAYS, latest(limit)),
      earliest(floor) {
        if (floor > NEVER) return NEVER;
        return Math.max(ALWAYS, latest(floor - 1) + 1);
      },
    };
  },
);

/**
 * Until when a film that was finished at `t` has gained no more than `sheetHours`: the last such whole minute, or NEVER when
 * it never gains more.
 */
export const notYetPast: (dose: Dose, sheetHours: number) => TimeMap = oncePer(
  (dose: Dose, sheetHours: number): TimeMap => {
    if (sheetHours < LEAST_HOURS) return shift(0);
    const hours = sheetHours + LEAST_HOURS / 2;
    const earliest = (floor: Minute): Minute => {
      if (floor > NEVER) return NEVER;
      const high = Math.min(floor, dose.last);
      const needed = dose.hoursAt(high);
      return firstDownFrom(high, dose, (t) => dose.hoursAt(t) + hours >= needed);
    };
    return {
      at(t) {
        const most = dose.hoursAt(t) + hours;
        const past = firstUpFrom(t, dose, (m) => dose.hoursAt(m) > most);
        return past > dose.last ? NEVER : past - 1;
      },
      latest(limit) {
        if (limit >= NEVER) return NEVER;
        return Math.max(ALWAYS, earliest(limit + 1) - 1);
      },
      earliest,
    };
  },
);

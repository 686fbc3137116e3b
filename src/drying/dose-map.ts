import { ALWAYS, NEVER, shift, type TimeMap } from '../time/time-map.ts';
import type { Minute } from '../time/span.ts';
import type { Dose } from './dose.ts';
import { firstDown, firstUp } from './first-minute.ts';

/** Less than this is no wait at all; it also keeps rounding from swallowing a wait. */
const LEAST_HOURS = 1e-6;

/** `firstUp` from a minute that was asked about; no day is summed up before it is known that those before it do not do. */
function firstUpFrom(low: Minute, dose: Dose, holds: (m: Minute) => boolean): Minute {
  const { last } = dose.knownAround(low);
  if (last >= dose.last || holds(last)) return firstUp(low, Math.min(last, dose.last), holds);
  return holds(last + 1) ? last + 1 : firstUpFrom(last + 1, dose, holds);
}

/** The same, searching down. */
function firstDownFrom(high: Minute, dose: Dose, holds: (m: Minute) => boolean): Minute {
  const { first } = dose.knownAround(high);
  if (first <= ALWAYS || !holds(first)) return firstDown(Math.max(ALWAYS, first), high, holds);
  return holds(first - 1) ? firstDownFrom(first - 1, dose, holds) : first;
}

/**
 * When a film that was finished at `t` has gained `sheetHours`: the first whole minute at which it has, or NEVER. `latest`
 * and `earliest` are its exact inverses, because all three compare the same two sums.
 */
export function reached(dose: Dose, sheetHours: number): TimeMap {
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
}

/**
 * Until when a film that was finished at `t` has gained no more than `sheetHours`: the last such whole minute, or NEVER when
 * it never gains more.
 */
export function notYetPast(dose: Dose, sheetHours: number): TimeMap {
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
}

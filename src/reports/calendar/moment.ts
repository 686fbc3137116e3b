import type { Shop } from '../../model/shop.ts';
import type { Minute } from '../../time/span.ts';
import { localTime } from '../../time/zone.ts';
import { isEndOfDay, sayClock, sayDate, type Manner } from '../say-time.ts';

/** How the shop wants things said on what is kept: in full, for no "tomorrow" is true for long. */
export function keptManner(shop: Shop): Manner {
  return { now: 0, zone: shop.timeZone, clock: shop.clock, units: shop.units, currency: shop.currency };
}

/** `Mon 11 Jan` */
export function dayText(minute: Minute, manner: Manner): string {
  return sayDate(minute, { ...manner, now: minute });
}

/** `Mon 11 Jan 07:30` */
export function momentText(minute: Minute, manner: Manner): string {
  return `${dayText(minute, manner)} ${sayClock(minute, manner)}`;
}

/** By when something is wanted: the day alone where it is all of that day. */
export function deadlineText(by: Minute, manner: Manner): string {
  return isEndOfDay(by, manner) ? dayText(by, manner) : momentText(by, manner);
}

/** `07:30` on the same day as `base`, else `Mon 11 Jan 07:30`. */
export function momentFrom(base: Minute, minute: Minute, manner: Manner): string {
  const sameDay = localTime(base, manner.zone).date === localTime(minute, manner.zone).date;
  return sameDay ? sayClock(minute, manner) : momentText(minute, manner);
}

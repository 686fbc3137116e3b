import type { Minute } from './span.ts';

/** Later than any calendar reaches: what a mark that is never reached answers. */
export const NEVER: Minute = 1_000_000_000;

/** Earlier than any calendar reaches. */
export const ALWAYS: Minute = -1_000_000_000;

/**
 * A non-decreasing function from one minute to another: when something that ended at `t` may go on, must be over, or
 * is dry. Because it never decreases (who coats later is never dry earlier), earliest and latest times follow exactly.
 */
export interface TimeMap {
  /** Image of minute `t`, a whole minute, or NEVER. */
  at(t: Minute): Minute;
  /** Largest `t` with `at(t) <= limit`; ALWAYS if there is none. */
  latest(limit: Minute): Minute;
  /** Smallest `t` with `at(t) >= floor`; NEVER if there is none. */
  earliest(floor: Minute): Minute;
}

/** `t -> t + minutes`. */
export function shift(minutes: number): TimeMap {
  return {
    at: (t) => t + minutes,
    latest: (limit) => limit - minutes,
    earliest: (floor) => floor - minutes,
  };
}

/** Always `minute`, whatever it is asked. */
export function fixedMap(minute: Minute): TimeMap {
  return {
    at: () => minute,
    latest: (limit) => (minute <= limit ? NEVER : ALWAYS),
    earliest: (floor) => (minute >= floor ? ALWAYS : NEVER),
  };
}

/** One map after the other, the first first. */
export function inTurn(maps: readonly TimeMap[]): TimeMap {
  const backwards = [...maps].reverse();
  return {
    at: (t) => maps.reduce((now, m) => (now >= NEVER ? NEVER : m.at(now)), t),
    latest: (limit) => backwards.reduce((now, m) => (now <= ALWAYS ? ALWAYS : m.latest(now)), limit),
    earliest: (floor) => backwards.reduce((now, m) => (now > NEVER ? NEVER : m.earliest(now)), floor),
  };
}

/** The later of several maps, point by point. */
export function laterOf(maps: readonly TimeMap[]): TimeMap {
  const [only] = maps;
  if (only !== undefined && maps.length === 1) return only;
  return {
    at: (t) => maps.reduce((most, m) => Math.max(most, m.at(t)), ALWAYS),
    latest: (limit) => maps.reduce((least, m) => Math.min(least, m.latest(limit)), NEVER),
    earliest: (floor) => maps.reduce((least, m) => Math.min(least, m.earliest(floor)), NEVER),
  };
}

/** The sooner of several maps, point by point. */
export function soonerOf(maps: readonly TimeMap[]): TimeMap {
  const [only] = maps;
  if (only !== undefined && maps.length === 1) return only;
  return {
    at: (t) => maps.reduce((least, m) => Math.min(least, m.at(t)), NEVER),
    latest: (limit) => maps.reduce((most, m) => Math.max(most, m.latest(limit)), ALWAYS),
    earliest: (floor) => maps.reduce((most, m) => Math.max(most, m.earliest(floor)), ALWAYS),
  };
}

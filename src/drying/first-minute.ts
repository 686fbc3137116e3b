import type { Minute } from '../time/span.ts';
import { ALWAYS, NEVER, type TimeMap } from '../time/time-map.ts';

/** Smallest minute of `low` to `high` at which `holds`, which stays true once it is; `high + 1` if none. Searches up. */
export function firstUp(low: Minute, high: Minute, holds: (m: Minute) => boolean): Minute {
  let failed = low - 1;
  let step = 64;
  let found = low;
  while (found <= high && !holds(found)) {
    failed = found;
    found += step;
    step *= 2;
  }
  return narrow(failed, Math.min(found, high + 1), holds);
}

/** The same, searching down from `high`. */
export function firstDown(low: Minute, high: Minute, holds: (m: Minute) => boolean): Minute {
  let found = high + 1;
  let step = 64;
  let failed = high;
  while (failed >= low && holds(failed)) {
    found = failed;
    failed -= step;
    step *= 2;
  }
  return narrow(Math.max(failed, low - 1), found, holds);
}

/** `failed` does not hold (or lies outside), `found` does (or lies outside). */
function narrow(failed: Minute, found: Minute, holds: (m: Minute) => boolean): Minute {
  let low = failed;
  let high = found;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** The map of a function that never goes down and never answers earlier than it was asked. */
export function mapOf(image: (t: Minute) => Minute): TimeMap {
  return {
    at: image,
    latest: (limit) =>
      limit >= NEVER ? NEVER : Math.max(ALWAYS, firstDown(ALWAYS, limit, (t) => image(t) > limit) - 1),
    earliest: (floor) => (floor > NEVER ? NEVER : firstDown(ALWAYS, floor, (t) => image(t) >= floor)),
  };
}

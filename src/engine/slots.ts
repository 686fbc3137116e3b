import { ALWAYS, NEVER } from '../time/time-map.ts';
import type { Minute } from '../time/span.ts';
import type { SpanIndex } from './span-index.ts';
import { int } from '../typed.ts';

/**
 * Where one mode may lie by itself: its starts and the end that follows from each. `end` grows with the start, so all
 * four questions have one answer.
 */
export class Slots {
  readonly duration: number;
  /** Allowed starts, before the horizon's end cuts them. */
  readonly domain: SpanIndex;
  /** Where work goes on; absent for a mode that runs through. */
  readonly calendar: SpanIndex | undefined;
  /** Last allowed start; ALWAYS if there is none. */
  readonly last: Minute;

  constructor(domain: SpanIndex, calendar: SpanIndex | undefined, duration: number, to: Minute) {
    this.duration = duration;
    this.domain = domain;
    this.calendar = duration === 0 ? undefined : calendar;
    this.last = NEVER;
    this.last = this.latestStart(to);
  }

  /** End of the mode when it starts at `start`, which must be an allowed start. */
  end(start: Minute): Minute {
    const calendar = this.calendar;
    if (calendar === undefined) return start + this.duration;
    let k = calendar.spanEndingAfter(start);
    if (k === calendar.count) return NEVER;
    const open = int(calendar.ends, k) - Math.max(start, int(calendar.starts, k));
    if (open >= this.duration) return Math.max(start, int(calendar.starts, k)) + this.duration;
    let left = this.duration - open;
    for (k += 1; k < calendar.count; k++) {
      const length = int(calendar.ends, k) - int(calendar.starts, k);
      if (length >= left) return int(calendar.starts, k) + left;
      left -= length;
    }
    return NEVER;
  }

  /** First allowed start at or after `t`; NEVER if there is none. */
  fit(t: Minute): Minute {
    if (t > this.last) return NEVER;
    const k = this.domain.spanEndingAfter(t);
    if (k === this.domain.count) return NEVER;
    const start = Math.max(t, int(this.domain.starts, k));
    return start <= this.last ? start : NEVER;
  }

  /** Last allowed start at or before `t`; ALWAYS if there is none. */
  fitBack(t: Minute): Minute {
    const limit = Math.min(t, this.last);
    const k = this.domain.spanEndingAfter(limit);
    if (k < this.domain.count && int(this.domain.starts, k) <= limit) return limit;
    return k === 0 ? ALWAYS : int(this.domain.ends, k - 1) - 1;
  }

  /** Last allowed start with an end at or before `limit`; ALWAYS if there is none. */
  latestStart(limit: Minute): Minute {
    return this.fitBack(this.latestRaw(limit));
  }

  /** First allowed start with an end at or after `floor`; NEVER if there is none. */
  earliestStart(floor: Minute): Minute {
    return this.fit(this.latestRaw(floor - 1) + 1);
  }

  /** Latest minute, allowed or not, whose `duration` minutes of work are over by `limit`. */
  private latestRaw(limit: Minute): Minute {
    const calendar = this.calendar;
    if (calendar === undefined) return limit - this.duration;
    const n = calendar.minutesBefore(limit) - this.duration;
    if (n < 0) return ALWAYS;
    const k = calendar.spanOfMinute(n);
    if (k === calendar.count) return NEVER;
    return int(calendar.starts, k) + n - int(calendar.before, k);
  }
}

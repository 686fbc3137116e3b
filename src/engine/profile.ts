import type { Minute } from '../time/span.ts';
import { NEVER } from '../time/time-map.ts';
import { int } from '../typed.ts';

const beginning = -2_000_000_000;

/** How much is in use at each minute: steps at sorted breakpoints. */
export class Profile {
  private times = new Int32Array(16);
  private levels = new Int32Array(16);
  private size = 1;

  constructor() {
    this.times[0] = beginning;
  }

  /** Adds `units` (which may be negative) from `from` until `until`. */
  add(from: Minute, until: Minute, units: number): void {
    if (from >= until) return;
    const first = this.breakAt(from, this.find(from));
    let k = first;
    while (k < this.size && int(this.times, k) < until) {
      this.levels[k] = int(this.levels, k) + units;
      k += 1;
    }
    if (k === this.size || int(this.times, k) !== until) {
      this.insert(k, until, int(this.levels, k - 1) - units);
    }
    this.join(k);
    this.join(first);
  }

  /**
   * Is the level above `limit` anywhere from `from` until `until`? Then the first later minute at which it no longer
   * is; otherwise `from` itself.
   */
  freeFrom(from: Minute, until: Minute, limit: number): Minute {
    if (from >= until) return from;
    for (let k = this.find(from); k < this.size && int(this.times, k) < until; k++) {
      if (int(this.levels, k) > limit) {
        do k += 1;
        while (k < this.size && int(this.levels, k) > limit);
        return k === this.size ? NEVER : int(this.times, k);
      }
    }
    return from;
  }

  /** First minute at or after `from` with a level above `limit`; NEVER if there is none. */
  fullFrom(from: Minute, limit: number): Minute {
    for (let k = this.find(from); k < this.size; k++) {
      if (int(this.levels, k) > limit) return Math.max(from, int(this.times, k));
    }
    return NEVER;
  }

  /** Makes this profile the same as `other`. */
  become(other: Profile): void {
    if (this.times.length < other.size) {
      this.times = new Int32Array(other.times.length);
      this.levels = new Int32Array(other.levels.length);
    }
    for (let k = 0; k < other.size; k++) {
      this.times[k] = int(other.times, k);
      this.levels[k] = int(other.levels, k);
    }
    this.size = other.size;
  }

  private find(t: Minute): number {
    let low = 0;
    let high = this.size - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (int(this.times, middle) <= t) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  /** Index of the breakpoint at `t`, made if need be; `k` is the last one at or before `t`. */
  private breakAt(t: Minute, k: number): number {
    if (int(this.times, k) === t) return k;
    this.insert(k + 1, t, int(this.levels, k));
    return k + 1;
  }

  private insert(k: number, t: Minute, level: number): void {
    if (this.size === this.times.length) {
      this.times = grown(this.times);
      this.levels = grown(this.levels);
    }
    shift(this.times, k, k + 1, this.size);
    shift(this.levels, k, k + 1, this.size);
    this.times[k] = t;
    this.levels[k] = level;
    this.size += 1;
  }

  /** Drops breakpoint `k` if the level does not change there. */
  private join(k: number): void {
    if (k === 0 || int(this.levels, k) !== int(this.levels, k - 1)) return;
    shift(this.times, k + 1, k, this.size);
    shift(this.levels, k + 1, k, this.size);
    this.size -= 1;
  }
}

/** Moves what lies from `from` up to `end` to `to`; a loop of its own, which for short stretches is the quicker. */
function shift(list: Int32Array, from: number, to: number, end: number): void {
  if (end - from > 100) list.copyWithin(to, from, end);
  else if (to > from) for (let k = end - 1; k >= from; k--) list[k + to - from] = int(list, k);
  else for (let k = from; k < end; k++) list[k + to - from] = int(list, k);
}

function grown(list: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(list.length * 2);
  larger.set(list);
  return larger;
}

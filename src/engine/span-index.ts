import type { Minute, Spans } from '../time/span.ts';
import { int } from '../typed.ts';

const stretchBits = 8;

/** Spans laid out for quick questions: which span comes next, and how many minutes lie before. */
export class SpanIndex {
  readonly count: number;
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  /** Minutes of the spans before span k; one more entry holds the total. */
  readonly before: Int32Array;
  private readonly base: Minute;
  private readonly firstEndingAfter: Int32Array;

  constructor(spans: Spans) {
    this.count = spans.length;
    this.starts = Int32Array.from(spans, (s) => s.start);
    this.ends = Int32Array.from(spans, (s) => s.end);
    this.before = new Int32Array(this.count + 1);
    for (let k = 0; k < this.count; k++)
      this.before[k + 1] = int(this.before, k) + int(this.ends, k) - int(this.starts, k);
    this.base = spans[0]?.start ?? 0;
    const stretches = (((spans.at(-1)?.end ?? 0) - this.base) >> stretchBits) + 1;
    this.firstEndingAfter = new Int32Array(stretches);
    for (let b = 0, k = 0; b < stretches; b++) {
      while (k < this.count && int(this.ends, k) <= this.base + (b << stretchBits)) k += 1;
      this.firstEndingAfter[b] = k;
    }
  }

  /** Index of the first span that ends after `t`; `count` if none does. */
  spanEndingAfter(t: Minute): number {
    const stretch = (t - this.base) >> stretchBits;
    if (stretch < 0) return 0;
    if (stretch >= this.firstEndingAfter.length) return this.count;
    let k = int(this.firstEndingAfter, stretch);
    while (k < this.count && int(this.ends, k) <= t) k += 1;
    return k;
  }

  /** Minutes of the spans that lie before `t`. */
  minutesBefore(t: Minute): number {
    const k = this.spanEndingAfter(t);
    if (k === this.count) return int(this.before, k);
    return int(this.before, k) + Math.max(0, t - int(this.starts, k));
  }

  /** Index of the span that holds the minute number `n` (0 is the first of all); `count` if there are not so many. */
  spanOfMinute(n: number): number {
    let low = 0;
    let high = this.count;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (int(this.before, middle + 1) <= n) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}

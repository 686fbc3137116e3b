/** An instant: whole minutes since 1970-01-01T00:00Z. The one unit of time inside the core. */
export type Minute = number;

/** A day of 24 hours. */
export const DAY_MINUTES = 24 * 60;

/** Half-open stretch of time: `start` belongs to it, `end` does not. */
export interface Span {
  readonly start: Minute;
  readonly end: Minute;
}

/** Sorted, disjoint, non-touching, non-empty spans. */
export type Spans = readonly Span[];

/** Sorts and joins overlapping or touching spans; drops empty ones. */
export function unite(spans: readonly Span[]): Spans {
  const sorted = spans.filter((s) => s.end > s.start).sort((a, b) => a.start - b.start);
  const joined: Span[] = [];
  for (const span of sorted) {
    const last = joined.at(-1);
    if (last !== undefined && span.start <= last.end) {
      if (span.end > last.end) joined[joined.length - 1] = { start: last.start, end: span.end };
    } else joined.push(span);
  }
  return joined;
}

/** Minutes in both `a` and `b`. */
export function intersect(a: Spans, b: Spans): Spans {
  const common: Span[] = [];
  let i = 0;
  let j = 0;
  for (;;) {
    const x = a[i];
    const y = b[j];
    if (x === undefined || y === undefined) return common;
    const start = Math.max(x.start, y.start);
    const end = Math.min(x.end, y.end);
    if (start < end) common.push({ start, end });
    if (x.end < y.end) i += 1;
    else j += 1;
  }
}

/** Minutes of `a` that are not in `b`. */
export function subtract(a: Spans, b: Spans): Spans {
  const left: Span[] = [];
  for (const span of a) {
    let from = span.start;
    for (const hole of b) {
      if (hole.end <= from) continue;
      if (hole.start >= span.end) break;
      if (hole.start > from) left.push({ start: from, end: hole.start });
      from = Math.max(from, hole.end);
    }
    if (from < span.end) left.push({ start: from, end: span.end });
  }
  return left;
}

/** Total length in minutes. */
export function lengthOf(spans: readonly Span[]): number {
  return spans.reduce((sum, s) => sum + (s.end - s.start), 0);
}

/** Does one of `spans` hold the whole of `inner`? */
export function covers(spans: Spans, inner: Span): boolean {
  return spans.some((s) => s.start <= inner.start && inner.end <= s.end);
}

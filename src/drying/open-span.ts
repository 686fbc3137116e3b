import type { Minute } from '../time/span.ts';

/** A span that may still grow. */
export interface OpenSpan {
  readonly start: Minute;
  end: Minute;
}

/** Adds what may go on the last of the spans. */
export function goOn(spans: OpenSpan[], start: Minute, end: Minute): void {
  const last = spans.at(-1);
  if (last?.end === start) last.end = end;
  else spans.push({ start, end });
}

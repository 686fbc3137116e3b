import type { Minute, Span } from '../time/span.ts';

/** A stretch for which someone has hold of one unit of something. Several claims of one holder count once. */
export interface Claim extends Span {
  readonly holder: string;
  readonly step: string;
}

/** A moment from which more is held than there is. */
export interface Overload {
  readonly at: Minute;
  readonly holders: number;
  /** The step whose claim is too much, then those that hold already. */
  readonly steps: readonly string[];
}

/** Every claim that begins while, with it, more than `capacity` holders are there at once. */
export function overloads(claims: readonly Claim[], capacity: number): Overload[] {
  const sorted = claims.filter((c) => c.start < c.end).sort((a, b) => a.start - b.start || a.end - b.end);
  const found: Overload[] = [];
  let held: Claim[] = [];
  for (const claim of sorted) {
    held = [...held.filter((h) => h.end > claim.start), claim];
    const holders = new Set(held.map((h) => h.holder)).size;
    if (holders <= capacity) continue;
    const others = held.filter((h) => h.holder !== claim.holder).map((h) => h.step);
    found.push({ at: claim.start, holders, steps: [claim.step, ...new Set(others)] });
  }
  return found;
}

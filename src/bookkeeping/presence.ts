import { equalParts } from '../model/money.ts';
import type { Minute } from '../time/span.ts';
import { localDays } from '../time/zone.ts';

/** From when to when a piece is in the shop. */
export interface Presence {
  readonly piece: string;
  readonly from: Minute;
  readonly to: Minute;
}

/** What the days of a piece come to: until now, and until it leaves. */
export interface Held {
  readonly daysSoFar: number;
  readonly days: number;
  readonly minorSoFar: number;
  readonly minor: number;
}

const nothing: Held = { daysSoFar: 0, days: 0, minorSoFar: 0, minor: 0 };

/**
 * Each calendar day costs the shop the same, open or closed; the pieces that are in it that day share this equally, so
 * that their shares add up to it exactly. The day of `now` counts as past.
 */
export function heldCosts(
  presences: readonly Presence[],
  minorPerDay: number,
  now: Minute,
  zone: string,
): ReadonlyMap<string, Held> {
  const byDay = new Map<Minute, string[]>();
  for (const { piece, from, to } of presences)
    for (const day of localDays(from, to, zone)) byDay.set(day.start, [...(byDay.get(day.start) ?? []), piece]);
  const held = new Map<string, Held>();
  for (const [start, pieces] of byDay) {
    const shares = equalParts(minorPerDay, pieces.length);
    pieces.forEach((piece, i) => {
      const { daysSoFar, days, minorSoFar, minor } = held.get(piece) ?? nothing;
      const share = shares[i] ?? 0;
      const isPast = start <= now;
      held.set(piece, {
        daysSoFar: daysSoFar + (isPast ? 1 : 0),
        days: days + 1,
        minorSoFar: minorSoFar + (isPast ? share : 0),
        minor: minor + share,
      });
    });
  }
  return held;
}

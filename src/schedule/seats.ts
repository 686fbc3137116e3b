import type { Minute } from '../time/span.ts';
import type { Place } from './places.ts';

/** A stay at a place, from the start of a step until its place is free again. */
export interface Stay {
  readonly task: string;
  readonly place: Place;
  readonly start: Minute;
  readonly until: Minute;
  /** The task whose station this one takes over, because what lies there cannot be moved yet. */
  readonly takesOver?: string;
  /** Station that it had before, or that its piece stood at: kept where it is free. */
  readonly wish?: string;
  /** Station that it has for certain. */
  readonly fixed?: string;
}

/**
 * Gives every stay a station of its place, those that are certain first. Stays that overlap never outnumber a place's slots,
 * so that, where nothing certain lies ahead, going through them by start always finds one (an interval graph needs as many
 * colours as its largest overlap).
 */
export function seat(stays: readonly Stay[]): Map<string, string> {
  const stationOf = new Map<string, string>();
  const taken = new Map<string, Stay[][]>();
  const ordered = [...stays].sort(
    (a, b) =>
      Number(b.fixed !== undefined) - Number(a.fixed !== undefined) ||
      a.start - b.start ||
      Number(b.takesOver !== undefined) - Number(a.takesOver !== undefined) ||
      a.task.localeCompare(b.task, 'en'),
  );
  const slotOf = new Map<string, { station: string; slot: number }>();
  const freeSlot = (stay: Stay, station: string): number => {
    const slots = taken.get(station) ?? [];
    return slots.findIndex((others) => others.every((o) => o.until <= stay.start || stay.until <= o.start));
  };
  for (const place of new Set(stays.map((s) => s.place)))
    for (const station of place.stations)
      taken.set(
        station.id,
        Array.from({ length: station.slots }, () => []),
      );
  for (const stay of ordered) {
    const inherited = stay.takesOver === undefined ? undefined : slotOf.get(stay.takesOver);
    const names = [stay.fixed, stay.wish, ...stay.place.stations.map((s) => s.id)].filter((n) => n !== undefined);
    const station = inherited?.station ?? names.find((n) => taken.has(n) && freeSlot(stay, n) >= 0) ?? names[0];
    if (station === undefined) throw new Error(`no station for ${stay.task}`);
    const slot = inherited?.slot ?? Math.max(0, freeSlot(stay, station));
    taken.get(station)?.[slot]?.push(stay);
    slotOf.set(stay.task, { station, slot });
    stationOf.set(stay.task, station);
  }
  return stationOf;
}

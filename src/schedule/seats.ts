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

/** A slot of a station, from the start of a stay. */
interface Taken {
  readonly station: string;
  readonly start: Minute;
  until: Minute;
}

/**
 * Gives every stay a station of its place, those that are certain first. Stays that overlap never outnumber a place's slots,
 * so that, where nothing certain lies ahead, going through them by start always finds one (an interval graph needs as many
 * colours as its largest overlap).
 */
export function seat(stays: readonly Stay[]): Map<string, string> {
  const stationOf = new Map<string, string>();
  const ordered = [...stays].sort(
    (a, b) =>
      Number(b.fixed !== undefined) - Number(a.fixed !== undefined) ||
      a.start - b.start ||
      Number(b.takesOver !== undefined) - Number(a.takesOver !== undefined) ||
      (a.task < b.task ? -1 : 1),
  );
  const slotsOf = new Map(stays.flatMap(({ place }) => place.stations.map((s) => [s.id, s.slots] as const)));
  const standing = new Map<string, Taken[]>();
  const takenBy = new Map<string, Taken>();
  const isFree = (station: string, { start, until }: Stay): boolean => {
    const met = (standing.get(station) ?? []).filter((s) => s.start < until && start < s.until);
    const begun = met.map((s) => Math.max(s.start, start));
    return [start, ...begun].every(
      (then) => met.filter((s) => s.start <= then && then < s.until).length < (slotsOf.get(station) ?? 0),
    );
  };
  for (const stay of ordered) {
    const before = takenBy.get(stay.takesOver ?? '');
    // From then on the slot is the one stay's, and no longer the other's.
    if (before !== undefined) before.until = Math.min(before.until, stay.start);
    const names = [stay.fixed, stay.wish, ...stay.place.stations.map((s) => s.id)].filter((n) => n !== undefined);
    const station = before?.station ?? names.find((n) => slotsOf.has(n) && isFree(n, stay)) ?? names[0];
    if (station === undefined) throw new Error(`no station for ${stay.task}`);
    const taken = { station, start: stay.start, until: stay.until };
    standing.set(station, [...(standing.get(station) ?? []), taken]);
    takenBy.set(stay.task, taken);
    stationOf.set(stay.task, station);
  }
  return stationOf;
}

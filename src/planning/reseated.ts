import { startOf, type PlannedStep } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import { type Place, placesOf } from '../schedule/places.ts';
import { seat, type Stay } from '../schedule/seats.ts';

/**
 * The steps with stations found anew at the places where those that moved stand: another piece may have to stand at the bench
 * beside. What is done, or at work, stays where it is.
 */
export function reseated(
  steps: readonly PlannedStep[],
  moving: ReadonlySet<string>,
  { book, tasks }: Situation,
): readonly PlannedStep[] {
  const placeOf = new Map<string, Place>();
  for (const place of placesOf(book.shop)) for (const { id } of place.stations) placeOf.set(id, place);
  const anew = new Set(steps.flatMap((s) => (moving.has(s.id) ? (placeOf.get(s.station) ?? []) : [])));
  const objects = new Map(tasks.map((t) => [t.id, t.object]));
  const before = new Map<string, PlannedStep>();
  const stays = steps.flatMap((step): Stay[] => {
    const { id, station, atOnceAfter, holdsStationUntil: until } = step;
    const place = placeOf.get(station);
    if (atOnceAfter !== undefined || place === undefined || !anew.has(place)) return [];
    const object = objects.get(id) ?? id;
    const last = before.get(object);
    before.set(object, step);
    const takesOver =
      last !== undefined && placeOf.get(last.station) === place && last.holdsStationUntil >= startOf(step);
    const settled = step.done === true || step.atWork === true;
    return [
      {
        task: id,
        place,
        start: startOf(step),
        until,
        ...(takesOver && { takesOver: last.id }),
        ...(settled ? { fixed: station } : { wish: station }),
      },
    ];
  });
  const stationOf = seat(stays);
  return steps.map((step) => {
    const station = stationOf.get(step.atOnceAfter ?? step.id);
    return station === undefined || station === step.station ? step : { ...step, station };
  });
}

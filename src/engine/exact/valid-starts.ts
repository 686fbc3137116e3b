import { int } from '../../typed.ts';
import type { Model } from './model.ts';

/** Does a schedule keep every window, arc and capacity of the model? */
export function areValid(model: Model, starts: Int32Array): boolean {
  const { earliest, latest, arcs } = model;
  const inside = starts.every((start, i) => start >= int(earliest, i) && start <= int(latest, i));
  const ordered = arcs.from.every((from, k) => int(starts, int(arcs.to, k)) >= int(starts, from) + int(arcs.weight, k));
  return inside && ordered && model.capacity.every((capacity, resource) => fits(model, starts, resource, capacity));
}

/** Adds up the use of one resource from change to change. */
function fits(model: Model, starts: Int32Array, resource: number, capacity: number): boolean {
  const changes = model.needs.flatMap((needs, i) =>
    needs
      .filter((need) => need.resource === resource)
      .flatMap(({ units }) => [
        { time: int(starts, i), units },
        { time: int(starts, i) + int(model.duration, i), units: -units },
      ]),
  );
  changes.sort((a, b) => a.time - b.time || a.units - b.units);
  let used = 0;
  return changes.every(({ units }) => (used += units) <= capacity);
}

import type { Breach } from '../breach.ts';
import type { Ground } from '../ground.ts';

/** No dusty step in a room while anything there is wet, from its application until dust-free. */
export function dustKept({ facts, situation, say }: Ground): Breach[] {
  return situation.book.shop.rooms.flatMap((room) => {
    const here = facts.filter((f) => f.station.room === room.id);
    const wet = here.filter((f) => f.laid !== undefined && f.wetUntil > f.start);
    return here
      .filter((f) => f.task.dusty)
      .flatMap((dusty) =>
        wet
          .filter(
            (w) => w !== dusty && w.start < dusty.end && dusty.start < w.wetUntil && !(w.settled && dusty.settled),
          )
          .map((w): Breach => {
            const text =
              `${say.step(dusty.id)} makes dust in ${room.name} from ${say.when(dusty.start)} to ${say.when(dusty.end)}, ` +
              `but ${say.step(w.id)} is wet there from ${say.when(w.start)} to ${say.when(w.wetUntil)}`;
            return { rule: 'dust', steps: [dusty.id, w.id], at: Math.max(w.start, dusty.start), text };
          }),
      );
  });
}

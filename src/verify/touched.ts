import { broughtIn } from './brought-in.ts';
import type { Fact } from './fact.ts';
import type { Ground } from './ground.ts';

/** Is all about the step just as it was, that its own air and the times shown of it go by? */
function sameAs(fact: Fact, ground: Ground, before: Ground): boolean {
  const was = before.byId.get(fact.id);
  if (was?.step !== fact.step || was.task !== fact.task) return false;
  const [film, wasFilm] = [fact.laid, was.laid];
  const sameFilm =
    film?.material === wasFilm?.material && film?.air === wasFilm?.air && film?.factor === wasFilm?.factor;
  if (!sameFilm || fact.settled !== was.settled || fact.station.room !== was.station.room) return false;
  const [from, wasFrom] = [broughtIn(fact, ground), broughtIn(was, before)];
  return from?.room === wasFrom?.room && from?.from === wasFrom?.from && from?.leaves === wasFrom?.leaves;
}

/** Ids of the pieces of which a step, or what it goes by, is otherwise than it was before. */
export function touchedPieces(ground: Ground, before: Ground): ReadonlySet<string> {
  const counts = new Map<string, number>();
  for (const { task } of before.facts) counts.set(task.piece, (counts.get(task.piece) ?? 0) + 1);
  for (const { task } of ground.facts) counts.set(task.piece, (counts.get(task.piece) ?? 0) - 1);
  const touched = new Set([...counts].flatMap(([piece, difference]) => (difference === 0 ? [] : [piece])));
  for (const fact of ground.facts)
    if (!touched.has(fact.task.piece) && !sameAs(fact, ground, before)) touched.add(fact.task.piece);
  return touched;
}

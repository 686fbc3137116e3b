import { broughtIn } from './brought-in.ts';
import type { Fact } from './fact.ts';
import type { Ground } from './ground.ts';
import { airAlike } from './other-air.ts';

/** Is it brought in from where and when it was before? */
function comesAsBefore(fact: Fact, ground: Ground, was: Fact, before: Ground): boolean {
  const [from, then] = [broughtIn(fact, ground), broughtIn(was, before)];
  if (from?.room !== then?.room || from?.leaves !== then?.leaves) return false;
  return from === undefined || airAlike(from.from, then?.from, { start: from.leaves, end: fact.start });
}

/** Ids of the pieces of which a step, or what it goes by, is otherwise than in the plan `before`, which has passed. */
export function touchedPieces(ground: Ground, before: Ground): ReadonlySet<string> {
  const missing = new Map<string, number>();
  for (const { task } of before.facts) missing.set(task.piece, (missing.get(task.piece) ?? 0) + 1);
  for (const { task } of ground.facts) missing.set(task.piece, (missing.get(task.piece) ?? 0) - 1);
  const touched = new Set([...missing].flatMap(([piece, count]) => (count === 0 ? [] : [piece])));
  for (const fact of ground.facts) {
    if (touched.has(fact.task.piece)) continue;
    const was = before.byId.get(fact.id);
    const same = fact.passed && was?.settled === fact.settled && comesAsBefore(fact, ground, was, before);
    if (!same) touched.add(fact.task.piece);
  }
  return touched;
}

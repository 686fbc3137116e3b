import { broughtIn } from './brought-in.ts';
import { isSure, type Fact } from './fact.ts';
import type { Ground } from './ground.ts';
import { airAlike } from './other-air.ts';

/** Is it brought in from where and when it was before? */
function comesAsBefore(fact: Fact, ground: Ground, was: Fact, before: Ground): boolean {
  const [from, then] = [broughtIn(fact, ground), broughtIn(was, before)];
  if (from?.leaves !== then?.leaves) return false;
  return from === undefined || airAlike(from.from, then?.from, { start: from.leaves, end: fact.start });
}

/** What is otherwise than in a plan that has passed. */
export interface Touched {
  /** Steps that are not as they were, or that their work comes to otherwise. */
  readonly facts: readonly Fact[];
  /** All steps of the pieces of these, and of those that had other steps. */
  readonly ofTheirPieces: readonly Fact[];
}

export function touchedIn(ground: Ground, before: Ground): Touched {
  const missing = new Map<string, number>();
  for (const { task } of before.facts) missing.set(task.piece, (missing.get(task.piece) ?? 0) + 1);
  for (const { task } of ground.facts) missing.set(task.piece, (missing.get(task.piece) ?? 0) - 1);
  const facts = ground.facts.filter((fact) => {
    const was = before.byId.get(fact.id);
    return !isSure(fact) || was?.settled !== fact.settled || !comesAsBefore(fact, ground, was, before);
  });
  const pieces = new Set(facts.map((f) => f.task.piece));
  for (const [piece, count] of missing) if (count !== 0) pieces.add(piece);
  return { facts, ofTheirPieces: ground.facts.filter((f) => pieces.has(f.task.piece)) };
}

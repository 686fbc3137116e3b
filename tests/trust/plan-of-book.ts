import { expect } from 'vitest';
import type { Book } from '../../src/model/book.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';

/** 2027-01-11T07:30 in the demo's zone. */
export const NOW = Date.UTC(2027, 0, 11, 6, 30) / 60_000;

/**
 * Plans one piece of a book, with as little search as there is. It must end in a plan that the verifier accepts or in
 * none, and in no throw.
 */
export function planOne(book: Book, piece: string): 'plan' | 'none' {
  const pieces = book.pieces.filter((p) => p.id === piece);
  const made = makePlan(situationOf({ ...book, pieces, journal: [] }, NOW), { seed: 1, steps: 1 });
  if (made.kind === 'broken') expect(made.breaches).toEqual([]);
  return made.kind === 'plan' ? 'plan' : 'none';
}

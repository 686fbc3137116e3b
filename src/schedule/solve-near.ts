import type { Outcome, Problem, SearchOptions } from '../engine/problem.ts';
import { solve } from '../engine/solve.ts';
import { termValues, valueOf } from '../engine/value.ts';

type Found = Outcome & { readonly status: 'optimal' | 'feasible' };

function lateness(problem: Problem, { terms }: Found): number {
  return terms.reduce((sum, { value }, k) => (problem.objective[k]?.kind === 'late' ? sum + value : sum), 0);
}

/** An answer found where moves cost nothing, with what its moves do cost. */
function withMoves(problem: Problem, { schedule, bound, steps }: Found): Found {
  const terms = termValues(problem, schedule).map((value) => ({ value, bound: 0 }));
  const value = valueOf(problem, schedule);
  return { status: value === bound ? 'optimal' : 'feasible', schedule, value, bound, terms, steps };
}

/**
 * Searches near the plan that the shop follows. Dates come before moves: where a piece would be late, the search looks
 * once more, with moves free of cost, and its answer is taken if it saves time past the dates.
 */
export function solveNear(problem: Problem, options: SearchOptions): Outcome {
  const near = solve(problem, options);
  if ((near.status !== 'feasible' && near.status !== 'optimal') || lateness(problem, near) === 0) return near;
  const objective = problem.objective.filter((term) => term.kind !== 'moved');
  const free = solve({ ...problem, objective }, options);
  if (free.status !== 'feasible' && free.status !== 'optimal') return near;
  const answer = withMoves(problem, free);
  return lateness(problem, answer) < lateness(problem, near) ? answer : near;
}

import type { Outcome, Problem, SearchOptions } from '../engine/problem.ts';
import { solve } from '../engine/solve.ts';
import { termValues, valueOf } from '../engine/value.ts';
import type { Minute } from '../time/span.ts';

type Found = Outcome & { readonly status: 'optimal' | 'feasible' };

/** A piece this little later than by the plan that is followed is not worth a plan that has nothing of it. */
const SLACK_MINUTES = 30;

/** What it costs that pieces come later past their dates than they do by the plan that is followed. */
function lateness(problem: Problem, { terms }: Found, lateByKept: ReadonlyMap<number, Minute>): number {
  return terms.reduce((sum, { value }, k) => {
    const term = problem.objective[k];
    if (term?.kind !== 'late') return sum;
    return sum + Math.max(0, value - term.weight * ((lateByKept.get(term.activity) ?? 0) + SLACK_MINUTES));
  }, 0);
}

function withoutMoves(problem: Problem): Problem {
  return { ...problem, objective: problem.objective.filter((term) => term.kind !== 'moved') };
}

/** An answer found where moves cost nothing, with what its moves do cost. */
function withMoves(problem: Problem, { schedule, bound, steps }: Found): Found {
  const terms = termValues(problem, schedule).map((value) => ({ value, bound: 0 }));
  const value = valueOf(problem, schedule);
  return { status: value === bound ? 'optimal' : 'feasible', schedule, value, bound, terms, steps };
}

/**
 * Searches near the plan that the shop follows. Dates come before moves: where a piece would be later past its date than
 * by that plan (`lateByKept`, by activity), the search looks once more, with moves free of cost, and its answer is taken
 * if it saves time past the dates.
 */
export function solveNear(problem: Problem, options: SearchOptions, lateByKept: ReadonlyMap<number, Minute>): Outcome {
  const near = solve(problem, options);
  if (near.status !== 'feasible' && near.status !== 'optimal') return near;
  const late = lateness(problem, near, lateByKept);
  if (late === 0) return near;
  const { loosened, ...asked } = options;
  const free = solve(withoutMoves(problem), { ...asked, ...(loosened && { loosened: withoutMoves(loosened) }) });
  if (free.status !== 'feasible' && free.status !== 'optimal') return near;
  const answer = withMoves(problem, free);
  return lateness(problem, answer, lateByKept) < late ? answer : near;
}

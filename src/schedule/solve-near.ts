import type { Outcome, Problem, SearchOptions } from '../engine/problem.ts';
import { solve } from '../engine/solve.ts';
import { termValues, valueOf } from '../engine/value.ts';
import type { Minute } from '../time/span.ts';

type Found = Outcome & { readonly status: 'optimal' | 'feasible' };

/** A piece this little later than by the plan that is followed is not worth a plan that has nothing of it. */
const SLACK_MINUTES = 30;

/** A piece that comes later past its date than by the plan that is followed, and than it must; and what that costs. */
interface Delay {
  readonly activity: number;
  readonly cost: number;
}

function delaysOf(problem: Problem, { terms }: Found, lateByKept: ReadonlyMap<number, Minute>): Delay[] {
  return terms
    .flatMap(({ value, bound }, k): Delay[] => {
      const term = problem.objective[k];
      if (term?.kind !== 'late') return [];
      const expected = term.weight * ((lateByKept.get(term.activity) ?? 0) + SLACK_MINUTES);
      const cost = value - Math.max(bound, expected);
      return cost > 0 ? [{ activity: term.activity, cost }] : [];
    })
    .sort((a, b) => b.cost - a.cost);
}

function isFound(outcome: Outcome): outcome is Found {
  return outcome.status === 'feasible' || outcome.status === 'optimal';
}

function withoutMoves(problem: Problem): Problem {
  return { ...problem, objective: problem.objective.filter((term) => term.kind !== 'moved') };
}

/** An answer found where moves cost nothing, with what its moves do cost. */
function withMoves(problem: Problem, { schedule, bound, modes, steps }: Found): Found {
  const terms = termValues(problem, schedule).map((value) => ({ value, bound: 0 }));
  const value = valueOf(problem, schedule);
  return { status: value === bound ? 'optimal' : 'feasible', schedule, value, bound, terms, modes, steps };
}

/**
 * Searches near the plan that the shop follows. Dates come before moves: where a piece would be later past its date than
 * by that plan (`lateByKept`, by activity), the search looks once more with those pieces first and what need not make
 * way for them as it was, and once with moves free of cost; the cheapest counts. Whoever
 * has asked for an end has the first.
 */
export function solveNear(problem: Problem, options: SearchOptions, lateByKept: ReadonlyMap<number, Minute>): Outcome {
  const near = solve(problem, options);
  if (!isFound(near)) return near;
  const urgent = delaysOf(problem, near, lateByKept).map((delay) => delay.activity);
  const { loosened, ...asked } = options;
  const isCut = () => options.stop?.() === true;
  if (urgent.length === 0 || isCut()) return near;
  const hurried = solve(problem, { ...options, urgent });
  const free = isCut()
    ? undefined
    : solve(withoutMoves(problem), { ...asked, ...(loosened && { loosened: withoutMoves(loosened) }) });
  return [near, hurried, ...(free !== undefined && isFound(free) ? [withMoves(problem, free)] : [])]
    .filter(isFound)
    .reduce((best, other) => (other.value < best.value ? other : best));
}

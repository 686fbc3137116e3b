import type { SearchOptions } from '../engine/problem.ts';
import { solve } from '../engine/solve.ts';
import { isFound } from './cheapest-choice.ts';
import type { Compiled } from './compiled.ts';
import { problemWith } from './session-problem.ts';
import type { Shared } from './share-sessions.ts';

type Options = Pick<SearchOptions, 'seed' | 'steps' | 'stop' | 'onBetter'>;

/** What the search has come to when it was stopped; no plan, with whatever sessions, costs less than `bound`. */
interface SearchedOn {
  readonly shared: Shared;
  readonly bound: number;
}

/** Searches on from `begun`, with the sessions that are in it, until it is stopped. */
export function searchOn(compiled: Compiled, begun: Shared, { seed, steps, stop, onBetter }: Options): SearchedOn {
  const found = solve(problemWith(compiled, begun.agreed), {
    seed,
    steps,
    goOn: true,
    from: begun.schedule,
    ...(stop && { stop }),
    ...(onBetter && { onBetter }),
    ...(compiled.ground.shares.size > 0 && { loosened: compiled.problem }),
  });
  if (!isFound(found)) return { shared: begun, bound: 0 };
  const { schedule, value, bound } = found;
  const shared = { ...begun, steps: begun.steps + found.steps };
  return { shared: value < begun.value ? { ...shared, schedule, value } : shared, bound };
}

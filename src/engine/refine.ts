import { constructFrom } from './construct.ts';
import { improve, keep, noneYet } from './improve.ts';
import { Labels } from './labels.ts';
import { netOf } from './net.ts';
import type { Problem, Schedule, SearchOptions } from './problem.ts';
import { scheduleOf } from './schedule-of.ts';
import { searchOf } from './search.ts';

/** A schedule and what it costs. */
export interface Refined {
  readonly schedule: Schedule;
  readonly value: number;
  readonly steps: number;
}

/**
 * Places everything as near as it can to `from`, and improves that within `steps`; undefined where no schedule is found
 * there. Proves nothing: `bound` is what is known already.
 */
export function refine(
  problem: Problem,
  options: SearchOptions & { readonly from: Schedule; readonly bound: number },
): Refined | undefined {
  const net = netOf(problem);
  const labels = new Labels(net);
  if (!labels.propagate()) return undefined;
  const search = searchOf(net, labels, options.seed);
  if (!constructFrom(search, options.from)) return undefined;
  const incumbent = noneYet(net.count, options.bound);
  keep(search, options, incumbent);
  improve(search, options, incumbent, options.steps);
  return { schedule: scheduleOf(net, incumbent), value: incumbent.value, steps: search.inserter.steps };
}

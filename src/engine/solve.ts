import { at } from '../at.ts';
import { componentOrders, construct, constructFrom } from './construct.ts';
import { improve, type Incumbent } from './improve.ts';
import { Labels, ownSlots } from './labels.ts';
import { netOf } from './net.ts';
import type { Conflict, Outcome, Problem, SearchOptions } from './problem.ts';
import { type Search, searchOf } from './search.ts';
import { int, real } from './typed.ts';
import { violations } from './valid.ts';
import { termValues } from './value.ts';

/** Most activities for which several starting orders are tried rather than one. */
const manyStarts = 4000;

/**
 * Searches the cheapest schedule of `problem`. The same problem, seed and budget give the same answer.
 * @throws {Error} if a schedule found breaks a rule of the problem, which is a defect of the search.
 */
export function solve(problem: Problem, options: SearchOptions): Outcome {
  const net = netOf(problem);
  const labels = new Labels(net);
  if (!labels.propagate()) return { status: 'infeasible', conflict: labelConflict(labels), steps: 0 };
  const search = searchOf(net, labels, options.seed);
  const incumbent: Incumbent = { value: Infinity, starts: new Int32Array(net.count), modes: new Int32Array(net.count) };
  const stuck = begin(search, options, incumbent);
  if (incumbent.value === Infinity)
    return {
      status: 'unknown',
      stuck: { activities: stuck < 0 ? [] : [stuck], lags: [], resources: [] },
      steps: search.inserter.steps,
    };
  improve(search, options, incumbent);
  return outcomeOf(search, incumbent);
}

/** First schedules; answers an activity that found no place, or -1. */
function begin(search: Search, options: SearchOptions, incumbent: Incumbent): number {
  let stuck = -1;
  if (options.from !== undefined && constructFrom(search, options.from)) keep(search, options, incumbent);
  const orders = componentOrders(search).slice(0, search.net.count > manyStarts ? 1 : 3);
  for (const order of orders) {
    if (options.stop?.() === true && incumbent.value < Infinity) break;
    const failed = construct(search, order);
    if (failed < 0) keep(search, options, incumbent);
    else stuck = failed;
  }
  return stuck;
}

/** Keeps the plan, all of it placed, if it is the best so far. */
function keep(search: Search, options: SearchOptions, incumbent: Incumbent): void {
  if (search.plan.value >= incumbent.value) return;
  incumbent.value = search.plan.value;
  incumbent.starts.set(search.plan.starts);
  incumbent.modes.set(search.plan.modes);
  options.onBetter?.(search.plan.value, search.costs.bound, search.inserter.steps);
}

function outcomeOf(search: Search, incumbent: Incumbent): Outcome {
  const { net, costs } = search;
  const schedule = {
    starts: [...incumbent.starts],
    ends: Array.from(incumbent.starts, (start, i) => at(net.modes, int(incumbent.modes, i)).slots.end(start)),
    modes: Array.from(incumbent.modes, (m, i) => m - int(net.modeFirst, i)),
  };
  const [broken] = violations(net.problem, schedule);
  if (broken !== undefined) throw new Error(`the schedule found breaks a rule: ${JSON.stringify(broken)}`);
  const values = termValues(net.problem, schedule);
  return {
    status: incumbent.value === costs.bound ? 'optimal' : 'feasible',
    schedule,
    value: incumbent.value,
    bound: costs.bound,
    terms: values.map((value, k) => ({ value, bound: real(costs.termBounds, k) })),
    steps: search.inserter.steps,
  };
}

/** The chain of lags that leaves an activity without a start. */
function labelConflict(labels: Labels): Conflict {
  const activities = new Set<number>();
  const lags = new Set<number>();
  const follow = (i: number, reasons: Int32Array): void => {
    activities.add(i);
    const lag = labels.net.lags[int(reasons, i)];
    if (int(reasons, i) === ownSlots || lag === undefined || lags.has(lag.index)) return;
    lags.add(lag.index);
    for (const condition of lag.when) activities.add(condition.activity);
    follow(lag.from === i ? lag.to : lag.from, reasons);
  };
  follow(labels.failed, labels.earliestReason);
  follow(labels.failed, labels.latestReason);
  const ordered = (set: Set<number>): number[] => [...set].sort((a, b) => a - b);
  return { activities: ordered(activities), lags: ordered(lags), resources: [] };
}

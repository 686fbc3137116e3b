import type { Conflict, Outcome, Problem, SearchOptions } from '../problem.ts';
import { randomFrom } from '../random.ts';
import { int } from '../../typed.ts';
import { buildOf } from './build.ts';
import { minimise } from './minimise.ts';
import { costOf, termValue, toModel } from './model.ts';
import type { Model } from './model.ts';
import { prepare } from './prepare.ts';
import { createSolver } from './solver.ts';
import { areValid } from './valid-starts.ts';
import { modesCost } from '../value.ts';

export { isExactForm } from './model.ts';

/** Solves a problem of the exact form (see `isExactForm`) and proves as much as the budget allows. */
export function solveExact(problem: Problem, options: SearchOptions): Outcome {
  const model = toModel(problem);
  const prepared = prepare(model);
  if ('activities' in prepared) return { status: 'infeasible', conflict: prepared, steps: 0 };
  const solver = createSolver(buildOf(model, prepared.links, prepared.pairs));
  const { best, bound, steps, settled } = minimise(prepared, solver, randomFrom(options.seed), options);
  if (best !== undefined) return scheduled(problem, model, best, settled ? costOf(model, best) : bound, steps);
  const conflict = everything(problem);
  return settled ? { status: 'infeasible', conflict, steps } : { status: 'unknown', stuck: conflict, steps };
}

function everything(problem: Problem): Conflict {
  return {
    activities: [...problem.activities.keys()],
    lags: [...problem.lags.keys()],
    resources: [...problem.resources.keys()],
  };
}

function scheduled(problem: Problem, model: Model, best: Int32Array, bound: number, steps: number): Outcome {
  if (!areValid(model, best)) throw new Error('defect: the search found a schedule that breaks its own problem');
  const cost = costOf(model, best);
  const schedule = {
    starts: Array.from(best, (start) => start + model.base),
    ends: Array.from(best, (start, i) => start + model.base + int(model.duration, i)),
    modes: Array.from(best, () => 0),
  };
  // Each activity has one mode: there is no other choice.
  const modes = modesCost(problem, schedule);
  return {
    status: cost === bound ? 'optimal' : 'feasible',
    schedule,
    value: cost + model.fixedCost,
    bound: bound + model.fixedCost,
    terms: problem.objective.map((term) => {
      const valueAt = (start: number) =>
        termValue(term, start + model.base, int(model.duration, term.activity), problem.from);
      const earliest = valueAt(int(model.earliest, term.activity));
      const whole = problem.objective.length === 1 ? bound + model.fixedCost : earliest;
      return { value: valueAt(int(best, term.activity)), bound: Math.max(earliest, whole) };
    }),
    modes: { value: modes, bound: modes },
    steps,
  };
}

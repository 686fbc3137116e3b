import type { Conflict, Outcome, Problem, SearchOptions } from '../problem.ts';
import { get } from './ints.ts';
import { costOf, termValue, toModel } from './model.ts';
import type { Model } from './model.ts';
import { prepare } from './prepare.ts';
import { createSolver } from './solver.ts';
import type { Solver } from './solver.ts';
import { buildOf } from './build.ts';
import { demandCost, readStarts, search } from './search.ts';
import { high } from './store.ts';

export { isExactForm } from './model.ts';

/** Solves a problem of the exact form (see `isExactForm`) and proves as much as the budget allows. */
export function solveExact(problem: Problem, options: SearchOptions): Outcome {
  const model = toModel(problem);
  const prepared = prepare(model);
  if ('activities' in prepared) return { status: 'infeasible', conflict: prepared, steps: 0 };
  const solver = createSolver(buildOf(model, prepared.links, prepared.pairs));
  let best: Int32Array | undefined;
  const stop = options.stop ?? (() => false);
  /** What is proven at level 0; a schedule just found stands on guesses above it. */
  const bound = () => solver.scale * get(solver.store.root, 2 * solver.cost);
  let target = solver.scale * high(solver.store, solver.cost);
  for (;;) {
    if (!solver.possible) break;
    const finding = search(solver, target, {
      conflicts: Number.MAX_SAFE_INTEGER,
      choices: options.steps - solver.choices,
      stop,
      active: true,
    });
    if (finding === 'stopped') return outcome(problem, model, best, bound(), solver);
    if (finding === 'refuted') break;
    best = readStarts(solver);
    for (let i = 0; i < best.length; i++) solver.guide[i] = get(best, i);
    target = costOf(model, best) - 1;
    options.onBetter?.(target + 1, bound(), solver.choices);
    demandCost(solver, target);
  }
  if (best === undefined) return { status: 'infeasible', conflict: everything(problem), steps: solver.choices };
  return outcome(problem, model, best, costOf(model, best), solver);
}

function everything(problem: Problem): Conflict {
  return {
    activities: [...problem.activities.keys()],
    lags: [...problem.lags.keys()],
    resources: [...problem.resources.keys()],
  };
}

function outcome(problem: Problem, model: Model, best: Int32Array | undefined, bound: number, solver: Solver): Outcome {
  if (best === undefined) return { status: 'unknown', stuck: everything(problem), steps: solver.choices };
  const value = costOf(model, best) + model.fixedCost;
  return {
    status: value === bound + model.fixedCost ? 'optimal' : 'feasible',
    schedule: {
      starts: Array.from(best, (start) => start + model.base),
      ends: Array.from(best, (start, i) => start + model.base + get(model.duration, i)),
      modes: Array.from(best, () => 0),
    },
    value,
    bound: bound + model.fixedCost,
    terms: problem.objective.map((term) => {
      const v = termValue(term, get(best, term.activity) + model.base, get(model.duration, term.activity), problem.from);
      return { value: v, bound: 0 };
    }),
    steps: solver.choices,
  };
}

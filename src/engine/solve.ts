import { isExactForm, solveExact } from './exact/solve-exact.ts';
import { solveGeneral } from './general.ts';
import type { Outcome, Problem, SearchOptions } from './problem.ts';

/**
 * Searches the cheapest schedule of `problem`. The same problem, seed and budget give the same answer.
 * @throws {Error} if a schedule found breaks a rule of the problem, which is a defect of the search.
 */
export function solve(problem: Problem, options: SearchOptions): Outcome {
  return isExactForm(problem) ? solveExact(problem, options) : solveGeneral(problem, options);
}

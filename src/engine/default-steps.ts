import type { Problem } from './problem.ts';

/**
 * A budget of steps that grows more slowly than the problem, for a wait that people put up with: a second or so
 * for a shop of 8 pieces, seconds for 100, a minute or so for 1000 (a few microseconds to some tens a step).
 */
export function defaultSteps(problem: Problem): number {
  const count = problem.activities.length;
  return Math.round(1_000 + 6 * count);
}

import type { Problem, SearchOptions } from './problem.ts';
import { solve } from './solve.ts';

/**
 * Which demands cannot hold together.
 * - `conflict`: the demands of `groups` are proven impossible together. `minimal`: dropping any one of them leaves a
 *   problem that has a schedule; false if for some the search found neither a schedule nor a proof.
 * - `possible`: all demands together have a schedule.
 * - `unproven`: no schedule was found, none excluded.
 */
export type ConflictResult =
  | { readonly kind: 'conflict'; readonly groups: readonly number[]; readonly minimal: boolean; readonly tests: number }
  | { readonly kind: 'possible' | 'unproven'; readonly tests: number };

/**
 * Finds a smallest set of demands that cannot hold together, by halving (Junker, "QuickXplain", AAAI 2004; from
 * memory).
 * @param count how many groups of demands may be dropped; the first are kept rather than the last
 * @param problemOf the problem in which only the given groups still stand
 * @param options budget of one test
 */
export function smallestConflict(
  count: number,
  problemOf: (kept: ReadonlySet<number>) => Problem,
  options: Pick<SearchOptions, 'seed' | 'steps' | 'stop'>,
): ConflictResult {
  let tests = 0;
  let minimal = true;
  const statusOf = (kept: readonly number[]) => {
    tests += 1;
    return solve(problemOf(new Set(kept)), options).status;
  };
  const isImpossible = (kept: readonly number[]): boolean => {
    const status = statusOf(kept);
    if (status === 'unknown') minimal = false;
    return status === 'infeasible';
  };
  /** Of `candidates`, those needed beside `kept`; `grown` tells whether `kept` has grown since it was last tested. */
  const needed = (kept: readonly number[], grown: boolean, candidates: readonly number[]): readonly number[] => {
    if (grown && isImpossible(kept)) return [];
    if (candidates.length === 1) return candidates;
    const middle = Math.ceil(candidates.length / 2);
    const first = candidates.slice(0, middle);
    const second = needed([...kept, ...first], true, candidates.slice(middle));
    return [...needed([...kept, ...second], second.length > 0, first), ...second];
  };

  const all = Array.from({ length: count }, (_, k) => k);
  const status = statusOf(all);
  if (status === 'unknown') return { kind: 'unproven', tests };
  if (status !== 'infeasible') return { kind: 'possible', tests };
  const groups = isImpossible([]) ? [] : needed([], false, all);
  return { kind: 'conflict', groups: [...groups].sort((a, b) => a - b), minimal, tests };
}

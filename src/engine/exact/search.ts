import { int } from '../../typed.ts';
import { forgetClauses } from './clauses.ts';
import { resolveConflict } from './learn.ts';
import { assertFact, choose, chooseActiveCut, chooseEarliest, goBackTo, propagate, settle } from './solver.ts';
import type { Solver } from './solver.ts';
import { high, low } from './store.ts';

/**
 * - `found`: all starts are fixed; read them off before going on.
 * - `refuted`: no schedule costs `target` or less.
 * - `stopped`: out of budget.
 */
export type Finding = 'found' | 'refuted' | 'stopped';

export interface Effort {
  /** Conflicts and choices after which to give up. */
  readonly conflicts: number;
  readonly choices: number;
  readonly stop: () => boolean;
}

/** Conflicts of the shortest run between restarts. */
const RUN = 128;
const ASK_EVERY = 128;

/** Looks for a schedule that costs at most `target`. */
export function search(solver: Solver, target: number, effort: Effort): Finding {
  const limit = Math.floor(target / solver.scale);
  const lastConflict = solver.conflicts + effort.conflicts;
  const lastChoice = solver.choices + effort.choices;
  goBackTo(solver, 0);
  for (let run = 1; ; run++) {
    const end = Math.min(lastConflict, solver.conflicts + RUN * luby(run));
    const finding = searchRun(solver, limit, end, lastChoice, effort.stop);
    if (finding === 'found' || finding === 'refuted') return finding;
    goBackTo(solver, 0);
    if (finding === 'stopped' || solver.conflicts >= lastConflict || solver.choices >= lastChoice || effort.stop())
      return 'stopped';
    settle(solver);
    const { clauses } = solver.store;
    if (solver.possible && clauses.learnt.length > clauseLimit(solver)) forgetClauses(solver.store);
  }
}

function clauseLimit(solver: Solver): number {
  return 4000 + Math.floor(10 * Math.sqrt(solver.conflicts));
}

function searchRun(
  solver: Solver,
  limit: number,
  lastConflict: number,
  lastChoice: number,
  stop: () => boolean,
): Finding | undefined {
  const s = solver.store;
  for (let step = 0; ; step++) {
    if (!solver.possible) return 'refuted';
    if (!propagate(solver)) {
      resolveConflict(solver);
      continue;
    }
    if (s.level === 0) {
      settle(solver);
      if (low(s, solver.cost) > limit) return 'refuted';
    }
    if (solver.conflicts >= lastConflict || solver.choices >= lastChoice) return undefined;
    if (step % ASK_EVERY === 0 && stop()) return 'stopped';
    if (high(s, solver.cost) > limit) choose(solver, 2 * solver.cost + 1, -limit);
    else if (!chooseActiveCut(solver) && !chooseEarliest(solver)) return 'found';
  }
}

/** 1 1 2 1 1 2 4 1 1 2 1 1 2 4 8 …: lengths of runs between restarts. */
function luby(index: number): number {
  let i = index;
  for (;;) {
    const bits = 32 - Math.clz32(i);
    if (i === 2 ** bits - 1) return 2 ** (bits - 1);
    i -= 2 ** (bits - 1) - 1;
  }
}

/** Holds for good that a schedule must cost at most `target`. */
export function demandCost(solver: Solver, target: number): void {
  assertFact(solver, 2 * solver.cost + 1, -Math.floor(target / solver.scale));
}

/** Holds for good that no schedule costs less than `bound`. */
export function demandBound(solver: Solver, bound: number): void {
  assertFact(solver, 2 * solver.cost, Math.ceil(bound / solver.scale));
}

/** The starts of a solver that has just `found` a schedule. */
export function readStarts(solver: Solver): Int32Array {
  return Int32Array.from({ length: solver.model.activities }, (_, i) => int(solver.store.value, 2 * i));
}

import type { Lag, Mode, Problem } from '../../../src/engine/problem.ts';

/** Objective of a schedule of single-mode activities of fixed length, checked from the problem's wording alone. */
export function costIfValid(problem: Problem, starts: readonly number[]): number | undefined {
  const modes = problem.activities.map((a) => a.modes[0]!);
  const inside = starts.every((s, i) => isInside(problem, modes[i]!, s));
  if (!inside || !problem.lags.every((lag) => holds(lag, modes, starts)) || !fits(problem, modes, starts))
    return undefined;
  return problem.objective.reduce((sum, term) => {
    const end = starts[term.activity]! + modes[term.activity]!.duration;
    if (term.kind === 'end') return sum + term.weight * (end - problem.from);
    if (term.kind === 'late') return sum + term.weight * Math.max(0, end - term.due);
    throw new Error('not of the exact form');
  }, 0);
}

/** The least objective over every schedule; undefined if there is none. */
export function bruteForce(problem: Problem): number | undefined {
  const modes = problem.activities.map((a) => a.modes[0]!);
  const starts: number[] = [];
  let best: number | undefined;
  const place = (i: number) => {
    if (i === modes.length) {
      const cost = costIfValid(problem, starts);
      if (cost !== undefined) best = Math.min(best ?? Infinity, cost);
      return;
    }
    const ready = problem.lags.filter((lag) => Math.max(lag.from, lag.to) === i);
    for (let s = problem.from; s + modes[i]!.duration <= problem.to; s++) {
      starts.push(s);
      if (ready.every((lag) => holds(lag, modes, starts))) place(i + 1);
      starts.pop();
    }
  };
  place(0);
  return best;
}

function isInside(problem: Problem, mode: Mode, start: number): boolean {
  return start >= problem.from && start + mode.duration <= problem.to;
}

function holds(lag: Lag, modes: readonly Mode[], starts: readonly number[]): boolean {
  const point = (i: number, which: 'start' | 'end') => starts[i]! + (which === 'end' ? modes[i]!.duration : 0);
  const gap = point(lag.to, lag.toPoint) - point(lag.from, lag.fromPoint);
  return gap >= numberOr(lag.least, -Infinity) && gap <= numberOr(lag.most, Infinity);
}

function numberOr(limit: Lag['least'], otherwise: number): number {
  if (limit === undefined) return otherwise;
  if (typeof limit === 'number') return limit;
  throw new Error('not of the exact form');
}

function fits(problem: Problem, modes: readonly Mode[], starts: readonly number[]): boolean {
  return problem.resources.every((resource, k) => {
    for (let t = problem.from; t < problem.to; t++) {
      const used = modes.reduce((sum, { duration, uses }, i) => {
        const runs = starts[i]! <= t && t < starts[i]! + duration;
        return runs ? sum + uses.reduce((units, use) => units + (use.resource === k ? use.units : 0), 0) : sum;
      }, 0);
      if (used > resource.capacity) return false;
    }
    return true;
  });
}

import { at } from '../../at.ts';
import type { Mode, Point, Problem, Term } from '../problem.ts';
import { int } from '../../typed.ts';

/**
 * A problem of the exact form, boiled down: activities of fixed duration with a window for the start, arcs between
 * starts, constant needs of constant capacities. Times are counted from `base`.
 */
export interface Model {
  readonly base: number;
  readonly activities: number;
  readonly duration: Int32Array;
  /** Window of the start, both ends included. */
  readonly earliest: Int32Array;
  readonly latest: Int32Array;
  readonly arcs: Arcs;
  readonly capacity: Int32Array;
  /** needs[i]: what activity i uses, each resource at most once. */
  readonly needs: readonly (readonly Need[])[];
  readonly goals: readonly Goal[];
  /** Part of the objective that no schedule changes. */
  readonly fixedCost: number;
}

/** Arc k: start of `to[k]` >= start of `from[k]` + `weight[k]`. `lag[k]`: the problem's lag it came from, or -1. */
export interface Arcs {
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly weight: Int32Array;
  readonly lag: Int32Array;
}

export interface Need {
  readonly resource: number;
  readonly units: number;
}

/** Costs `weight` for every period the start of `activity` lies after `after`. */
export interface Goal {
  readonly activity: number;
  readonly weight: number;
  readonly after: number;
}

/** Most cells (activity × period) the exact engine lays tables over. */
const MOST_CELLS = 20_000_000;

/** Most the objective may come to, so that it fits the numbers the search counts with. */
const MOST_COST = 1_000_000_000;

/** Is this a problem the exact engine can take: one fixed mode each, numbers for lags, a sum of `end` and `late`? */
export function isExactForm(problem: Problem): boolean {
  const whole = (value: unknown) => value === undefined || Number.isSafeInteger(value);
  return (
    problem.activities.length > 0 &&
    problem.activities.every((a) => a.modes.length === 1 && a.modes.every(isPlainMode)) &&
    problem.lags.every((lag) => whole(lag.least) && whole(lag.most)) &&
    problem.objective.length > 0 &&
    problem.objective.every((term) => term.kind !== 'moved' && Number.isSafeInteger(term.weight) && term.weight >= 0) &&
    problem.activities.length * (problem.to - problem.from) <= MOST_CELLS &&
    problem.objective.reduce((sum, term) => sum + term.weight, 0) * (problem.to - problem.from) <= MOST_COST
  );
}

function isPlainMode(mode: Mode): boolean {
  return (
    mode.calendar === undefined &&
    (mode.presences ?? []).length === 0 &&
    (mode.starts === undefined || mode.starts.length === 1) &&
    mode.uses.every((use) => use.hold === undefined)
  );
}

/** The model of a problem of the exact form. */
export function toModel(problem: Problem): Model {
  const modes = problem.activities.map((a) => at(a.modes, 0));
  const windows = modes.map((mode) => {
    const [span] = mode.starts ?? [];
    return span === undefined
      ? { first: problem.from, last: problem.to - mode.duration }
      : { first: span.start, last: Math.min(span.end - 1, problem.to - mode.duration) };
  });
  const base = Math.min(problem.from, ...windows.map((w) => w.first));
  return {
    base,
    activities: modes.length,
    duration: Int32Array.from(modes, (m) => m.duration),
    earliest: Int32Array.from(windows, (w) => w.first - base),
    latest: Int32Array.from(windows, (w) => w.last - base),
    arcs: arcsOf(problem, modes),
    capacity: Int32Array.from(problem.resources, (r) => r.capacity),
    needs: modes.map(needsOf),
    ...goalsOf(problem, modes, base),
  };
}

function arcsOf(problem: Problem, modes: readonly Mode[]): Arcs {
  const list: { from: number; to: number; weight: number; lag: number }[] = [];
  const offset = (activity: number, point: Point) => (point === 'end' ? at(modes, activity).duration : 0);
  problem.lags.forEach((lag, index) => {
    if ((lag.when ?? []).some((condition) => !condition.modes.includes(0))) return;
    const between = offset(lag.from, lag.fromPoint) - offset(lag.to, lag.toPoint);
    if (typeof lag.least === 'number')
      list.push({ from: lag.from, to: lag.to, weight: between + lag.least, lag: index });
    if (typeof lag.most === 'number')
      list.push({ from: lag.to, to: lag.from, weight: -between - lag.most, lag: index });
  });
  return {
    from: Int32Array.from(list, (a) => a.from),
    to: Int32Array.from(list, (a) => a.to),
    weight: Int32Array.from(list, (a) => a.weight),
    lag: Int32Array.from(list, (a) => a.lag),
  };
}

function needsOf(mode: Mode): Need[] {
  const units = new Map<number, number>();
  if (mode.duration > 0)
    for (const use of mode.uses) units.set(use.resource, (units.get(use.resource) ?? 0) + use.units);
  return [...units].filter(([, sum]) => sum > 0).map(([resource, sum]) => ({ resource, units: sum }));
}

function goalsOf(problem: Problem, modes: readonly Mode[], base: number): Pick<Model, 'goals' | 'fixedCost'> {
  let fixedCost = modes.reduce((sum, mode) => sum + (mode.cost ?? 0), 0);
  const goals: Goal[] = [];
  for (const term of problem.objective) {
    if (term.weight === 0 || term.kind === 'moved') continue;
    const duration = at(modes, term.activity).duration;
    if (term.kind === 'late')
      goals.push({ activity: term.activity, weight: term.weight, after: term.due - duration - base });
    else {
      fixedCost += term.weight * (base + duration - problem.from);
      goals.push({ activity: term.activity, weight: term.weight, after: Number.NEGATIVE_INFINITY });
    }
  }
  return { goals, fixedCost };
}

/** Cost of one goal (without its fixed part) when its activity starts at `start`. */
export function goalCost(goal: Goal, start: number): number {
  return goal.weight * (goal.after === Number.NEGATIVE_INFINITY ? start : Math.max(0, start - goal.after));
}

/** Value of the objective's terms, in the problem's own order and measure. */
export function termValue(term: Term, start: number, duration: number, from: number): number {
  switch (term.kind) {
    case 'end':
      return term.weight * (start + duration - from);
    case 'late':
      return term.weight * Math.max(0, start + duration - term.due);
    case 'moved':
      return term.weight * Math.abs(start - term.at);
  }
}

/** Objective of `starts` without the fixed part. */
export function costOf(model: Model, starts: Int32Array): number {
  return model.goals.reduce((sum, goal) => sum + goalCost(goal, int(starts, goal.activity)), 0);
}

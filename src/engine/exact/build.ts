import { int } from '../../typed.ts';
import { NO_GUARD } from './links.ts';
import type { Link } from './links.ts';
import type { Model } from './model.ts';
import type { Pair } from './prepare.ts';
import type { Sum } from './sum.ts';

/** What a solver is built from: windows of all variables (the starts first), what binds them, and what they cost. */
export interface Build {
  readonly model: Model;
  readonly lowest: Int32Array;
  readonly highest: Int32Array;
  readonly links: readonly Link[];
  /** Variable to minimise: the objective is `scale` times its value. */
  readonly cost: number;
  readonly scale: number;
  readonly sum: Sum | undefined;
}

/**
 * Variables and arcs of the search: starts, then one 0/1 variable per pair (1 if `first` goes first), then how late
 * each goal with a due time is, then the total cost unless it is one start itself.
 */
export function buildOf(model: Model, links: readonly Link[], pairs: readonly Pair[]): Build {
  const lowest = Array.from(model.earliest);
  const highest = Array.from(model.latest);
  const all: Link[] = [...links];
  const add = (low: number, high: number) => {
    lowest.push(low);
    highest.push(high);
    return lowest.length - 1;
  };
  for (const { first, second } of pairs) {
    const x = add(0, 1);
    all.push({ from: first, to: second, weight: int(model.duration, first), guard: 2 * x });
    all.push({ from: second, to: first, weight: int(model.duration, second), guard: 2 * x + 1 });
  }
  const parts = model.goals.map(({ activity, weight, after }) => {
    if (after === Number.NEGATIVE_INFINITY) return { x: activity, weight };
    const x = add(0, Math.max(0, int(model.latest, activity) - after));
    all.push({ from: activity, to: x, weight: -after, guard: NO_GUARD });
    return { x, weight };
  });
  const [only] = parts;
  if (only !== undefined && parts.length === 1)
    return { model, ...windows(lowest, highest), links: all, cost: only.x, scale: only.weight, sum: undefined };
  const range = (bounds: readonly number[]) =>
    parts.reduce((total, { x, weight }) => total + weight * (bounds[x] ?? 0), 0);
  const total = add(range(lowest), Math.max(range(lowest), range(highest)));
  const sum = {
    total,
    variable: Int32Array.from(parts, ({ x }) => x),
    weight: Int32Array.from(parts, ({ weight }) => weight),
  };
  return { model, ...windows(lowest, highest), links: all, cost: total, scale: 1, sum };
}

function windows(lowest: readonly number[], highest: readonly number[]) {
  return { lowest: Int32Array.from(lowest), highest: Int32Array.from(highest) };
}

import { get } from './ints.ts';
import type { Link } from './links.ts';
import type { Prepared } from './prepare.ts';
import type { Build } from './solver.ts';

/** Variables and arcs of the search: starts first, then one 0/1 variable per pair, 1 if `first` goes first. */
export function buildOf(prepared: Prepared): Build {
  const { model, pairs } = prepared;
  const n = model.activities;
  const lowest = new Int32Array(n + pairs.length);
  const highest = new Int32Array(n + pairs.length).fill(1);
  lowest.set(model.earliest);
  highest.set(model.latest);
  const links: Link[] = [...prepared.links];
  pairs.forEach(({ first, second }, k) => {
    const x = n + k;
    links.push({ from: first, to: second, weight: get(model.duration, first), guard: 2 * x });
    links.push({ from: second, to: first, weight: get(model.duration, second), guard: 2 * x + 1 });
  });
  const [goal] = model.goals;
  if (goal === undefined || model.goals.length > 1) throw new Error('todo');
  return { model, lowest, highest, links, cost: goal.activity };
}

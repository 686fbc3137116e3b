import { at } from '../at.ts';
import { neighbourhoods } from './neighbourhoods.ts';
import type { SearchOptions } from './problem.ts';
import { clearWishes, insertAll, placesOf, removeAll, type Search } from './search.ts';
import { int, real } from '../typed.ts';

/** The best schedule so far; `modes` are numbered through. */
export interface Incumbent {
  value: number;
  /** No schedule is cheaper. */
  bound: number;
  readonly starts: Int32Array;
  readonly modes: Int32Array;
}

/** No schedule yet, and none cheaper than `bound`. */
export function noneYet(count: number, bound: number): Incumbent {
  return { value: Infinity, bound, starts: new Int32Array(count), modes: new Int32Array(count) };
}

/** How far above the best plan a new one may lie at first: a share of what one component has above the bound. */
const warmth = 0.3;
/** Placements of a long stretch: for each step of the budget, and at most. */
const longPerStep = 35;
const mostOfLong = 300_000;
/** How often `stop` is asked, in rebuilds. */
const stopEvery = 32;

/** How many placements make a long stretch of improving, by a budget of so many steps. */
export function longStretch(steps: number): number {
  return Math.min(steps * longPerStep, mostOfLong);
}

/**
 * Large neighbourhood search: takes a part out, places it anew in another order or other modes, keeps the result if it
 * is not much dearer, and less so as the budget runs down, if it is to cool. `incumbent` is the best plan ever met.
 * Ends when the inserter has counted `until` steps.
 */
export function improve(
  search: Search,
  options: SearchOptions,
  incumbent: Incumbent,
  until: number,
  isCooling = true,
): void {
  const { plan, inserter } = search;
  restore(search, incumbent);
  const worth = new Float64Array(neighbourhoods.length).fill(1);
  const begun = inserter.steps;
  let bestGuide = plan.guide;
  for (let rebuilds = 1; inserter.steps < until && incumbent.value > incumbent.bound; rebuilds++) {
    if (rebuilds % stopEvery === 0 && options.stop?.() === true) break;
    const before = plan.guide;
    const kind = pick(search, worth);
    const left = isCooling ? 1 - (inserter.steps - begun) / Math.max(1, until - begun) : 1;
    const excess = Math.max(0, incumbent.value - incumbent.bound) / search.structure.components.length;
    const limit = Math.max(before, bestGuide + warmth * left * search.random.unit() * excess);
    const list = at(neighbourhoods, kind)(search);
    if (list.length === 0) {
      inserter.steps += 1;
      continue;
    }
    rebuild(search, list, limit);
    const gain = plan.guide < before - 1e-6 ? 1 : 0;
    bestGuide = Math.min(bestGuide, plan.guide);
    worth[kind] = real(worth, kind) * 0.98 + 0.02 * (0.1 + 20 * gain);
    keep(search, options, incumbent);
  }
}

/** Keeps the plan, all of it placed, if it is the best so far. */
export function keep(search: Search, options: SearchOptions, incumbent: Incumbent): void {
  const { plan } = search;
  if (plan.value >= incumbent.value) return;
  incumbent.value = plan.value;
  incumbent.starts.set(plan.starts);
  incumbent.modes.set(plan.modes);
  options.onBetter?.(plan.value, incumbent.bound, search.inserter.steps);
}

/** Takes `list` out and places it anew by the keys; all goes back if that fails or gets dearer than `limit`. */
function rebuild(search: Search, list: readonly number[], limit: number): void {
  const putAllBack = placesOf(search, list);
  removeAll(search, list);
  const done = insertAll(search, list, limit, search.random.below(3) > 0);
  clearWishes(search, list);
  if (!done) putAllBack();
}

/** Puts the plan to where `incumbent` has it. */
export function restore(search: Search, incumbent: Incumbent): void {
  const { plan, net } = search;
  for (let i = 0; i < net.count; i++) if (plan.isPlaced(i)) plan.remove(i);
  for (let i = 0; i < net.count; i++) plan.place(i, int(incumbent.modes, i), int(incumbent.starts, i));
}

function pick(search: Search, worth: Float64Array): number {
  let point = search.random.unit() * worth.reduce((sum, value) => sum + value, 0);
  for (let k = 0; k < worth.length; k++) {
    point -= real(worth, k);
    if (point < 0) return k;
  }
  return worth.length - 1;
}

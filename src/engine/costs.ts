import { at } from '../at.ts';
import type { Minute } from '../time/span.ts';
import type { Labels } from './labels.ts';
import type { Net } from './net.ts';
import type { Term } from './problem.ts';
import { int, real } from '../typed.ts';
import { termValue } from './value.ts';

/** The objective, activity by activity. */
export interface Costs {
  /** By activity: its terms. */
  readonly terms: readonly (readonly Term[])[];
  /** By activity: the least it can cost within its labels. */
  readonly least: Float64Array;
  /** Sum of `least`: no schedule is cheaper. */
  readonly bound: number;
  /** By term of the objective: the least it can cost. */
  readonly termBounds: Float64Array;
  /** The least that the modes can cost together. */
  readonly modesBound: number;
}

/** Lays out the objective; `labels` must be propagated. */
export function costsOf(net: Net, labels: Labels): Costs {
  const terms = Array.from({ length: net.count }, (): Term[] => []);
  for (const term of net.problem.objective) at(terms, term.activity).push(term);
  const termBounds = Float64Array.from(net.problem.objective, (term) => leastOf(term, net, labels));
  const least = new Float64Array(net.count);
  for (let i = 0; i < net.count; i++) least[i] = leastModeCost(net, labels, i);
  const modesBound = sumOf(least);
  net.problem.objective.forEach((term, k) => {
    least[term.activity] = real(least, term.activity) + real(termBounds, k);
  });
  return { terms, least, termBounds, modesBound, bound: sumOf(least) };
}

function sumOf(list: Float64Array): number {
  return list.reduce((sum, value) => sum + value, 0);
}

/** What activity `i` costs from `start` to `end` in mode `m`. */
export function costAt(net: Net, costs: Costs, i: number, m: number, start: Minute, end: Minute): number {
  let cost = at(net.modes, m).cost;
  for (const term of at(costs.terms, i)) cost += termValue(term, net.problem.from, start, end);
  return cost;
}

function leastModeCost(net: Net, labels: Labels, i: number): number {
  let least = Infinity;
  for (let m = int(net.modeFirst, i); m < int(net.modeFirst, i + 1); m++)
    if (labels.isOpen(m)) least = Math.min(least, at(net.modes, m).cost);
  return least;
}

/** Each kind of term is linear between its corners, so its least within the labels is at one of them or at a corner. */
export function leastOf(term: Term, net: Net, labels: Labels): number {
  const i = term.activity;
  const from = net.problem.from;
  const [first, last] =
    term.kind === 'moved'
      ? [labels.earliestStart(i), labels.latestStart(i)]
      : [labels.earliestEnd(i), labels.latestEnd(i)];
  const corner = term.kind === 'moved' ? term.at : term.kind === 'late' ? term.due : first;
  const inner = Math.min(Math.max(corner, first), last);
  return Math.min(...[first, inner, last].map((t) => termValue(term, from, t, t)));
}

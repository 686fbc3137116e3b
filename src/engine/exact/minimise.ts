import { at } from '../../at.ts';
import type { SearchOptions } from '../problem.ts';
import type { Random } from '../random.ts';
import { int } from '../typed.ts';
import { bestOf, breedOnce, createBreed } from './breed.ts';
import { attempt, createImprover } from './improve.ts';
import { costOf } from './model.ts';
import type { Prepared } from './prepare.ts';
import { demandBound, demandCost, readStarts, search } from './search.ts';
import type { Finding } from './search.ts';
import type { Solver } from './solver.ts';
import { high } from './store.ts';

/** Best schedule found, what is proven, and whether nothing is left open between them. */
export interface Result {
  readonly best: Int32Array | undefined;
  readonly bound: number;
  readonly settled: boolean;
  readonly steps: number;
}

/** First limits on the cost: bound plus these shares of the way to the most it can be; and conflicts for the first. */
const FIRST_SHARES = [0, 1 / 64, 1 / 16, 1 / 4, 1];
const FIRST_TRY = 50;
/** Schedules bred before the first search, where there are no maximum lags. */
const FIRST_CHILDREN = 1000;
/** Conflicts the whole problem is searched for before parts of a schedule are. */
const FIRST_CONFLICTS = 1000;

/**
 * Finds a first schedule under ever wider limits on the cost; then, in turns, searches the whole problem for a
 * cheaper one, refutes costs from below, and betters the best schedule part by part.
 */
export function minimise(prepared: Prepared, solver: Solver, random: Random, options: SearchOptions): Result {
  const { model } = prepared;
  const stop = options.stop ?? (() => false);
  let best: Int32Array | undefined;
  let cost = solver.scale * high(solver.store, solver.cost) + 1;
  let partChoices = 0;
  const steps = () => solver.choices + partChoices;
  /** What is proven at level 0; a schedule just found stands on guesses above it. */
  const bound = () => solver.scale * int(solver.store.root, 2 * solver.cost);
  const over = () => steps() >= options.steps || stop();
  const settled = () => !solver.possible || bound() >= cost;
  const result = (): Result => ({ best, bound: bound(), settled: settled(), steps: steps() });
  const accept = (starts: Int32Array) => {
    best = starts;
    cost = costOf(model, starts);
    solver.guide.set(starts);
    options.onBetter?.(cost + model.fixedCost, bound() + model.fixedCost, steps());
    demandCost(solver, cost - 1);
  };
  const searchAll = (target: number, conflicts: number): Finding => {
    const choices = options.steps - steps();
    const finding = search(solver, target, { conflicts, work: Number.MAX_SAFE_INTEGER, choices, stop, active: true });
    if (finding === 'found') accept(readStarts(solver));
    if (finding === 'refuted' && solver.possible) demandBound(solver, target + 1);
    return finding;
  };

  const breed = createBreed(model, random);
  const breedFor = (children: number) => {
    if (breed === undefined) return;
    for (let k = 0; k < children && !over(); k++) breedOnce(breed);
    partChoices += children * model.activities;
    const member = bestOf(breed);
    if (member !== undefined && member.cost < cost) accept(member.starts);
  };
  breedFor(0);
  if (bound() < cost) breedFor(FIRST_CHILDREN);

  const highest = cost - 1;
  for (let round = 0; best === undefined; round++) {
    if (over() || settled()) return result();
    const share = at(FIRST_SHARES, round % FIRST_SHARES.length);
    searchAll(bound() + Math.round(share * (highest - bound())), FIRST_TRY * 1.5 ** round);
  }

  const improver = createImprover(prepared, random);
  let climb = 1;
  for (let round = 0; !settled() && !over(); round++) {
    const workBefore = solver.work;
    const last = solver.conflicts + (round === 0 ? FIRST_CONFLICTS : 500);
    while (!settled() && !over() && solver.conflicts < last) searchAll(cost - 1, last - solver.conflicts);
    if (settled() || over()) break;
    const target = Math.min(cost - 1, bound() + climb - 1);
    const finding = searchAll(target, 125);
    climb = finding === 'refuted' ? climb * 2 : Math.max(1, climb >> 1);
    const share = 2 * (solver.work - workBefore);
    for (let spent = 0; spent < share && !settled() && !over();) {
      const { starts, choices, work } = attempt(improver, best, cost, over);
      partChoices += choices;
      spent += work;
      if (starts === undefined) continue;
      if (costOf(model, starts) < cost) accept(starts);
      else best = starts;
    }
  }
  return result();
}

import { at } from '../../at.ts';
import type { SearchOptions } from '../problem.ts';
import type { Random } from '../random.ts';
import { int } from '../../typed.ts';
import { bestOf, breedOnce, createBreed } from './breed.ts';
import { attempt, createImprover } from './improve.ts';
import type { Improver } from './improve.ts';
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

/** Schedules bred before the first search, where there are no maximum lags. */
const FIRST_CHILDREN = 1000;
/** First limits on the cost: bound plus these shares of the way to the most it can be; and conflicts for the first. */
const FIRST_SHARES = [0, 1 / 64, 1 / 16, 1 / 4, 1];
const FIRST_TRY = 50;
/** Conflicts the whole problem is searched for before parts of a schedule are, and from then on in each round. */
const FIRST_CONFLICTS = 1000;
const CONFLICTS = 500;
/** Conflicts in each round for refuting a cost near the bound. */
const CLIMB_CONFLICTS = 125;
/** Work on parts of the schedule for each unit of work on the whole. */
const PART_SHARE = 2;

/** A search under way. */
interface Hunt {
  readonly prepared: Prepared;
  readonly solver: Solver;
  readonly random: Random;
  readonly options: SearchOptions;
  best: Int32Array | undefined;
  /** Cost of `best`, or one more than anything can cost. */
  cost: number;
  /** Steps taken outside `solver`. */
  otherSteps: number;
}

/**
 * Finds a first schedule under ever wider limits on the cost; then, in turns, searches the whole problem for a
 * cheaper one, refutes costs from below, and betters the best schedule part by part.
 */
export function minimise(prepared: Prepared, solver: Solver, random: Random, options: SearchOptions): Result {
  const cost = solver.scale * high(solver.store, solver.cost) + 1;
  const hunt: Hunt = { prepared, solver, random, options, best: undefined, cost, otherSteps: 0 };
  if (solver.possible) breedFirst(hunt);
  for (let round = 0; hunt.best === undefined && !isOver(hunt); round++) {
    const share = at(FIRST_SHARES, round % FIRST_SHARES.length);
    const target = boundOf(hunt) + Math.round(share * (cost - 1 - boundOf(hunt)));
    searchWhole(hunt, target, FIRST_TRY * 1.5 ** round);
  }
  if (!isOver(hunt)) searchInTurns(hunt);
  return { best: hunt.best, bound: boundOf(hunt), settled: isSettled(hunt), steps: stepsOf(hunt) };
}

function stepsOf(hunt: Hunt): number {
  return hunt.solver.choices + hunt.otherSteps;
}

/** What is proven at level 0; a schedule just found stands on guesses above it. */
function boundOf({ solver }: Hunt): number {
  return solver.scale * int(solver.store.root, 2 * solver.cost);
}

function isSettled(hunt: Hunt): boolean {
  return !hunt.solver.possible || boundOf(hunt) >= hunt.cost;
}

function isSpent(hunt: Hunt): boolean {
  return stepsOf(hunt) >= hunt.options.steps || hunt.options.stop?.() === true;
}

function isOver(hunt: Hunt): boolean {
  return isSettled(hunt) || isSpent(hunt);
}

/** Takes `starts`, which cost less than anything before, and asks for less from now on. */
function accept(hunt: Hunt, starts: Int32Array): void {
  const { solver, options, prepared } = hunt;
  hunt.best = starts;
  hunt.cost = costOf(prepared.model, starts);
  solver.guide.set(starts);
  const { fixedCost } = prepared.model;
  options.onBetter?.(hunt.cost + fixedCost, Math.min(boundOf(hunt), hunt.cost) + fixedCost, stepsOf(hunt));
  demandCost(solver, hunt.cost - 1);
}

function searchWhole(hunt: Hunt, target: number, conflicts: number): Finding {
  const { solver } = hunt;
  const choices = hunt.options.steps - stepsOf(hunt);
  const finding = search(solver, target, { conflicts, choices, stop: () => isSpent(hunt) });
  if (finding === 'found') accept(hunt, readStarts(solver));
  if (finding === 'refuted' && solver.possible) demandBound(solver, target + 1);
  return finding;
}

function breedFirst(hunt: Hunt): void {
  const { model } = hunt.prepared;
  const breed = createBreed(model, hunt.random);
  if (breed === undefined) return;
  for (let child = 0; child <= FIRST_CHILDREN && !isOver(hunt); child++) {
    const best = bestOf(breed);
    if (best !== undefined && best.cost < hunt.cost) accept(hunt, best.starts);
    breedOnce(breed);
    hunt.otherSteps += model.activities;
  }
}

function searchInTurns(hunt: Hunt): void {
  const { solver, prepared, random } = hunt;
  const improver = createImprover(prepared, random);
  let climb = 1;
  for (let round = 0; !isOver(hunt); round++) {
    const workBefore = solver.work;
    const last = solver.conflicts + (round === 0 ? FIRST_CONFLICTS : CONFLICTS);
    while (!isOver(hunt) && solver.conflicts < last) searchWhole(hunt, hunt.cost - 1, last - solver.conflicts);
    if (isOver(hunt)) return;
    const finding = searchWhole(hunt, Math.min(hunt.cost - 1, boundOf(hunt) + climb - 1), CLIMB_CONFLICTS);
    climb = finding === 'refuted' ? climb * 2 : Math.max(1, climb >> 1);
    improveParts(hunt, improver, PART_SHARE * (solver.work - workBefore));
  }
}

/** Betters parts of the best schedule. A schedule as cheap as the last takes its place, so as not to get stuck. */
function improveParts(hunt: Hunt, improver: Improver, work: number): void {
  if (improver.users.length === 0) return;
  for (let spent = 0; spent < work && !isOver(hunt) && hunt.best !== undefined;) {
    const result = attempt(improver, hunt.best, hunt.cost, () => isSpent(hunt));
    hunt.otherSteps += result.choices;
    spent += result.work;
    if (result.starts === undefined) continue;
    if (costOf(hunt.prepared.model, result.starts) < hunt.cost) accept(hunt, result.starts);
    else hunt.best = result.starts;
  }
}

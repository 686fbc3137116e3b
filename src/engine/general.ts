import { at } from '../at.ts';
import { type Costs, costsOf } from './costs.ts';
import { complete } from './complete.ts';
import { componentOrders, construct, constructFrom } from './construct.ts';
import { arrange, type Told } from './arrange.ts';
import { defaultSteps } from './default-steps.ts';
import { followOrders } from './follow-orders.ts';
import { goOn } from './go-on.ts';
import { improve, type Incumbent, keep, longStretch, noneYet } from './improve.ts';
import { labelConflict } from './label-conflict.ts';
import { Labels } from './labels.ts';
import { type Net, netOf } from './net.ts';
import type { Outcome, Problem, Schedule, SearchOptions } from './problem.ts';
import { priceBound, type Priced } from './prices/price-bound.ts';
import { scheduleOf } from './schedule-of.ts';
import { type Search, searchOf } from './search.ts';
import { constructStaying } from './stay.ts';
import { int, real } from '../typed.ts';
import { type Structure, structureOf } from './structure.ts';
import { violations } from './valid.ts';
import { modesCost, termValues } from './value.ts';

/** Most activities for which several starting orders are tried rather than one. */
const manyStarts = 4000;
/** Most activities for which a complete search is tried. */
const smallEnough = 200;
/** Nodes of a first complete search, which settles the smallest problems at once. */
const fewNodes = 500;
/**
 * How many cells of buckets may be priced for the bound: by step of the budget, and at most; and as many where no complete search
 * is tried and laying them out is cheap, up to where prices have settled.
 */
const cellsPerStep = 12_000;
const mostCells = 600_000_000;
const settlingCellsPerStep = 56_000;
const settlingCells = 240_000_000;
/** How many times as long prices may settle where the search goes on until it is stopped. */
const settlingOfLong = 2;
/** How many orders of the prices are placed by, for as many steps as there are activities; and placements for all of them. */
const ordersPerRound = 4;
const orderPlacements = 60_000;
/** Placements of a first look at whether improving part by part pays: for each step of the budget, and at most. */
const lookPerStep = 5;
const longestLook = 20_000;
/** Share of its value by which a plan must have become cheaper for a long stretch to be spent on it. */
const paying = 0.003;

/**
 * Searches the cheapest schedule of any problem: places everything, improves it part by part, bounds it by prices, and,
 * if it is small, settles it by a complete search. The same problem, seed and budget give the same answer.
 * @throws {Error} if a schedule found breaks a rule of the problem, which is a defect of the search.
 */
export function solveGeneral(problem: Problem, options: SearchOptions): Outcome {
  const net = netOf(problem);
  const labels = new Labels(net);
  if (!labels.propagate()) return { status: 'infeasible', conflict: labelConflict(labels), steps: 0 };
  const search = searchOf(net, labels, options.seed);
  const basis =
    options.loosened === undefined
      ? { net, labels, costs: search.costs, structure: search.structure }
      : basisOf(options.loosened);
  const incumbent = noneYet(net.count, basis.costs.bound);
  const hasHomes = problem.objective.some((term) => term.kind === 'moved');
  if (options.from !== undefined && hasHomes && stays(search, options, incumbent, options.from)) {
    raiseBound(basis, options, incumbent);
    return outcomeOf(search, basis, incumbent);
  }
  const stuck = begin(search, options, incumbent, hasHomes);
  const nodes = smallEnough < net.count ? 0 : Math.ceil((options.steps * 10) / (10 + net.count));
  let done = prove(net, options, incumbent, Math.min(nodes, fewNodes));
  let told: Told = { orders: [], market: undefined };
  if (incumbent.value < Infinity) {
    improve(search, options, incumbent, options.steps * 0.3);
    const most = Math.ceil(Math.min(ordersPerRound * options.steps, orderPlacements) / net.count);
    const isNew = options.from === undefined || options.goOn === true;
    const { orders, market } = raiseBound(basis, options, incumbent, isNew ? most : 0);
    told = { orders: followOrders(search, options, incumbent, orders), market };
  }
  done ||= nodes > fewNodes && prove(net, options, incumbent, nodes);
  if (incumbent.value < Infinity) {
    if (!done) arrange(search, options, incumbent, told);
    if (!done) improveWhileItPays(search, options, incumbent, hasHomes);
    if (!done && options.goOn === true && options.stop !== undefined) goOn(search, options, incumbent, told);
    return outcomeOf(search, basis, incumbent);
  }
  const { steps } = search.inserter;
  if (done) return { status: 'infeasible', conflict: everything(problem), steps };
  return { status: 'unknown', stuck: { activities: stuck < 0 ? [] : [stuck], lags: [], resources: [] }, steps };
}

/**
 * Improves part by part for a while, and for long where that pays: it does in shops whose pieces can be worked on in many ways,
 * and little where only the order counts. Near a plan that people follow, the first look is all.
 */
function improveWhileItPays(search: Search, options: SearchOptions, incumbent: Incumbent, isNear: boolean): void {
  const { inserter } = search;
  const { steps } = options;
  const before = incumbent.value;
  const look = isNear ? 0 : Math.min(steps * lookPerStep, longestLook);
  improve(search, options, incumbent, inserter.steps + Math.max(steps * 0.7, look));
  if (isNear || before - incumbent.value < paying * before) return;
  improve(search, options, incumbent, inserter.steps + longStretch(steps));
}

/** Minutes for which what could stay makes way for what cannot: each is tried, and the cheapest taken. */
const spares = [0, 4, 12, 36, 84, 180].map((hours) => hours * 60);

/** Places what can stay where `from` has it, and the rest anew; true if all stays, and then nothing else is looked for. */
function stays(search: Search, options: SearchOptions, incumbent: Incumbent, from: Schedule): boolean {
  const urgent = [...new Set(options.urgent?.map((i) => int(search.structure.componentOf, i)))];
  const isCut = () => incumbent.value < Infinity && options.stop?.() === true;
  for (const components of prefixes(urgent)) {
    if (isCut()) return false;
    if (constructStaying(search, from, { components }) !== undefined) keep(search, options, incumbent);
    if (constructFrom(search, from, components)) keep(search, options, incumbent);
  }
  for (const spare of spares) {
    if (isCut()) return false;
    const anew = constructStaying(search, from, { spare });
    if (anew !== undefined) keep(search, options, incumbent);
    if (anew?.length === 0 && urgent.length === 0) return true;
  }
  return false;
}

/** The first, the first two and so on, up to all. */
function prefixes(list: readonly number[]): number[][] {
  return list.map((_, k) => list.slice(0, k + 1));
}

/** What the bound is proven on. */
interface Basis {
  readonly net: Net;
  readonly labels: Labels;
  readonly costs: Costs;
  readonly structure: Structure;
}

function basisOf(problem: Problem): Basis {
  const net = netOf(problem);
  const labels = new Labels(net);
  labels.propagate();
  return { net, labels, costs: costsOf(net, labels), structure: structureOf(net, labels) };
}

/** First schedules; answers an activity that found no place, or -1. */
function begin(search: Search, options: SearchOptions, incumbent: Incumbent, hasHomes: boolean): number {
  if (options.from !== undefined && constructFrom(search, options.from)) keep(search, options, incumbent);
  // The budget is better spent near a plan that people follow than on plans that have nothing of it.
  if (incumbent.value < Infinity && hasHomes) return -1;
  let stuck = -1;
  const orders = componentOrders(search);
  for (const order of search.net.count > manyStarts ? orders.slice(0, 1) : orders) {
    if (options.stop?.() === true && incumbent.value < Infinity) break;
    const failed = construct(search, order);
    if (failed < 0) keep(search, options, incumbent);
    else stuck = failed;
  }
  return stuck;
}

/** Searches completely within `nodes`; true if the incumbent is proven best, or that there is none. */
function prove(net: Net, options: SearchOptions, incumbent: Incumbent, nodes: number): boolean {
  if (nodes === 0 || incumbent.value <= incumbent.bound) return false;
  const { done } = complete(new Labels(net), {
    below: incumbent.value,
    nodes,
    stop: options.stop,
    onFound: (candidate, value) => {
      incumbent.value = value;
      incumbent.starts.set(candidate.starts);
      incumbent.modes.set(candidate.modes);
      options.onBetter?.(value, incumbent.bound, 0);
    },
  });
  if (done && options.loosened === undefined) incumbent.bound = incumbent.value;
  return done;
}

/**
 * Raises the incumbent's bound by prices. Objectives are whole numbers, so the bound may be rounded up. Answers the prices,
 * and up to `most` orders to place by.
 */
function raiseBound(
  { net, labels, structure }: Basis,
  options: SearchOptions,
  incumbent: Incumbent,
  most = 0,
): Pick<Priced, 'orders' | 'market'> {
  if (incumbent.value <= incumbent.bound || incumbent.bound < 0) return { orders: [] };
  const horizon = incumbent.starts.reduce(
    (last, start, i) => Math.max(last, at(net.modes, int(incumbent.modes, i)).slots.end(start)),
    net.problem.from,
  );
  // Whoever has asked for an end waits no longer than for the bound of a search that nobody gave more time.
  const steps = options.stop?.() === true ? Math.min(options.steps, defaultSteps(net.problem)) : options.steps;
  const work = Math.min(steps * cellsPerStep, mostCells);
  const settling = options.goOn === true ? settlingOfLong : 1;
  const priced = priceBound(net, labels, structure, incumbent, horizon, {
    work,
    settlingWork: net.count > smallEnough ? settling * Math.min(steps * settlingCellsPerStep, settlingCells) : 0,
    orders: most,
    stop: options.stop,
  });
  incumbent.bound = Math.max(incumbent.bound, Math.min(incumbent.value, Math.ceil(priced.bound)));
  return priced;
}

function everything(problem: Problem): { activities: number[]; lags: number[]; resources: number[] } {
  return {
    activities: problem.activities.map((_, i) => i),
    lags: problem.lags.map((_, i) => i),
    resources: problem.resources.map((_, i) => i),
  };
}

function outcomeOf(search: Search, { costs }: Basis, incumbent: Incumbent): Outcome {
  const { net } = search;
  const schedule = scheduleOf(net, incumbent);
  const [broken] = violations(net.problem, schedule);
  if (broken !== undefined) throw new Error(`the schedule found breaks a rule: ${JSON.stringify(broken)}`);
  const { value, bound } = incumbent;
  return {
    status: value === bound ? 'optimal' : 'feasible',
    schedule,
    value,
    bound,
    modes: { value: modesCost(net.problem, schedule), bound: costs.modesBound },
    terms: termValues(net.problem, schedule).map((term, k) => ({ value: term, bound: real(costs.termBounds, k) })),
    steps: search.inserter.steps,
  };
}

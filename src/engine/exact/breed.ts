import type { Random } from '../random.ts';
import { int } from '../../typed.ts';
import { costOf } from './model.ts';
import type { Model } from './model.ts';
import { createPlacer, forwardOrder, placeBackward, placeForward } from './place.ts';
import type { Placer } from './place.ts';

/**
 * Schedules without maximum lags, bred: the order of one is crossed with the order of another, laid, pushed to the
 * right and back to the left, and kept if it is better than the worst (a hybrid genetic algorithm after Valls,
 * Ballestín and Quintanilla, from memory).
 */
export interface Breed {
  readonly placer: Placer;
  readonly random: Random;
  /** Place of each activity in an order in which every arc goes forward. */
  readonly rank: Int32Array;
  readonly members: Member[];
}

export interface Member {
  readonly starts: Int32Array;
  readonly cost: number;
  /** Activities by start. */
  readonly order: Int32Array;
}

const MEMBERS = 40;

/**
 * Undefined unless every arc lets the second activity start after the first has ended: only then is the order of the
 * starts, and backwards that of the ends, an order in which the activities can be laid.
 */
export function createBreed(model: Model, random: Random): Breed | undefined {
  const { from, weight } = model.arcs;
  if (from.some((activity, k) => int(weight, k) < int(model.duration, activity))) return undefined;
  const placer = createPlacer(model);
  const order = forwardOrder(placer);
  if (order === undefined) return undefined;
  const rank = new Int32Array(order.length);
  order.forEach((activity, k) => (rank[activity] = k));
  const tail = tailsOf(model, rank);
  const breed: Breed = { placer, random, rank, members: [] };
  for (let k = 0; k < MEMBERS; k++) {
    const member = laid(breed, byTail(placer, tail, random, k === 0 ? 0 : 0.4));
    if (member !== undefined) breed.members.push(member);
  }
  return breed;
}

/** Longest path from each start to the end of everything after it. */
function tailsOf(model: Model, rank: Int32Array): Int32Array {
  const tail = model.duration.slice();
  const { from, to, weight } = model.arcs;
  const arcs = [...from.keys()].sort((a, b) => int(rank, int(from, b)) - int(rank, int(from, a)));
  for (const k of arcs) tail[int(from, k)] = Math.max(int(tail, int(from, k)), int(tail, int(to, k)) + int(weight, k));
  return tail;
}

/** An order that respects the arcs, long tails first, shaken by `blur`. */
function byTail(placer: Placer, tail: Int32Array, random: Random, blur: number): Int32Array {
  const { arcs, activities } = placer.model;
  const { first, items } = placer.outOf;
  const open = new Int32Array(activities);
  for (const to of arcs.to) open[to] = int(open, to) + 1;
  const urgency = Float64Array.from(tail, (length) => length * (1 + blur * (random.unit() - 0.5)));
  const ready = [...open.keys()].filter((i) => int(open, i) === 0);
  const order = new Int32Array(activities);
  for (let k = 0; k < activities; k++) {
    let best = 0;
    for (let r = 1; r < ready.length; r++)
      if ((urgency[ready[r] ?? 0] ?? 0) > (urgency[ready[best] ?? 0] ?? 0)) best = r;
    const [chosen = 0] = ready.splice(best, 1);
    order[k] = chosen;
    for (let a = int(first, chosen); a < int(first, chosen + 1); a++) {
      const to = int(arcs.to, int(items, a));
      open[to] = int(open, to) - 1;
      if (int(open, to) === 0) ready.push(to);
    }
  }
  return order;
}

/** The cheapest member. */
export function bestOf(breed: Breed): Member | undefined {
  return breed.members.reduce<Member | undefined>(
    (best, member) => (best === undefined || member.cost < best.cost ? member : best),
    undefined,
  );
}

/** One new schedule from two members; it takes the place of the parent it does not fall behind. */
export function breedOnce(breed: Breed): void {
  const { members, random } = breed;
  const a = random.below(members.length);
  const b = random.below(members.length);
  const mother = members[a];
  const father = members[b];
  if (mother === undefined || father === undefined) return;
  const order = cross(mother.order, father.order, random);
  shake(breed, order);
  const child = laid(breed, order);
  if (child !== undefined) replace(breed, mother.cost >= father.cost ? a : b, child);
}

/** The middle piece comes in the father's order, the ends in the mother's; arcs stay forward. */
function cross(mother: Int32Array, father: Int32Array, random: Random): Int32Array {
  const n = mother.length;
  const a = random.below(n + 1);
  const b = random.below(n + 1);
  const begin = Math.min(a, b);
  const end = Math.max(a, b);
  const taken = new Uint8Array(n);
  const child = new Int32Array(n);
  let size = 0;
  const take = (activity: number) => {
    child[size] = activity;
    size += 1;
    taken[activity] = 1;
  };
  for (let k = 0; k < begin; k++) take(int(mother, k));
  for (let k = 0; k < n && size < end; k++) if (taken[int(father, k)] === 0) take(int(father, k));
  for (let k = 0; k < n; k++) if (taken[int(mother, k)] === 0) take(int(mother, k));
  return child;
}

/** Swaps a few neighbours that no arc ties. */
function shake(breed: Breed, order: Int32Array): void {
  const { random, placer } = breed;
  const { arcs } = placer.model;
  for (let k = 0; k + 1 < order.length; k++) {
    if (random.below(20) !== 0) continue;
    const first = int(order, k);
    const second = int(order, k + 1);
    let tied = false;
    for (let a = int(placer.outOf.first, first); a < int(placer.outOf.first, first + 1); a++)
      if (int(arcs.to, int(placer.outOf.items, a)) === second) tied = true;
    if (tied) continue;
    order[k] = second;
    order[k + 1] = first;
  }
}

function laid(breed: Breed, order: Int32Array): Member | undefined {
  const starts = new Int32Array(order.length);
  return placeForward(breed.placer, order, starts) ? memberOf(breed, pushedTogether(breed, starts)) : undefined;
}

function memberOf(breed: Breed, starts: Int32Array): Member {
  return { starts, cost: costOf(breed.placer.model, starts), order: orderedBy(breed, starts, false) };
}

function orderedBy(breed: Breed, starts: Int32Array, byEnd: boolean): Int32Array {
  const { rank, placer } = breed;
  const { duration } = placer.model;
  const key = Int32Array.from(starts, (start, i) => start + (byEnd ? int(duration, i) : 0));
  return Int32Array.from(key.keys()).sort((a, b) => int(key, a) - int(key, b) || int(rank, a) - int(rank, b));
}

/** Pushes everything to the right, then to the left, as long as that makes the schedule cheaper. */
function pushedTogether(breed: Breed, starts: Int32Array): Int32Array {
  const { placer } = breed;
  const { model } = placer;
  let best = starts;
  for (let cost = costOf(model, best); ;) {
    const end = best.reduce((last, start, i) => Math.max(last, start + int(model.duration, i)), 0);
    const right = best.slice();
    if (!placeBackward(placer, orderedBy(breed, best, true).reverse(), right, end)) return best;
    const left = right.slice();
    if (!placeForward(placer, orderedBy(breed, right, false), left)) return best;
    const now = costOf(model, left);
    if (now <= cost) best = left;
    if (now >= cost) return best;
    cost = now;
  }
}

/** The newcomer takes a member's place unless it costs more or is there already. */
function replace(breed: Breed, place: number, member: Member): void {
  const { members } = breed;
  if (member.cost > (members[place]?.cost ?? 0)) return;
  if (members.some((other) => other.cost === member.cost && isSame(other.starts, member.starts))) return;
  members[place] = member;
}

function isSame(a: Int32Array, b: Int32Array): boolean {
  for (let k = 0; k < a.length; k++) if (int(a, k) !== int(b, k)) return false;
  return true;
}

import { int } from '../../typed.ts';
import { roomFor } from './ints.ts';

/**
 * Bounds, trail and everything else a learning search keeps between two steps.
 *
 * A variable `x` has two bounds that only ever rise: bound `2x` is its lower bound, bound `2x + 1` is minus its upper
 * bound. A *fact* is a pair (bound, value), "this bound is at least value"; the opposite of (b, v) is (b ^ 1, 1 - v).
 * So precedence, clauses and learning are written once and serve both directions.
 */
export interface Store {
  readonly variables: number;
  /** Value of each bound now, and at level 0. */
  readonly value: Int32Array;
  readonly root: Int32Array;
  /** Up to which value each bound has been propagated. */
  readonly followed: Int32Array;
  /** Place on the trail where each bound last rose, -1 if it never did above level 0. */
  readonly latest: Int32Array;
  /** TRAIL_WIDTH numbers for each rise. */
  trail: Int32Array;
  trailSize: number;
  /** Next place of the trail that is to be propagated. */
  head: number;
  level: number;
  levelStart: Int32Array;
  /** Reasons written out, trimmed when the search goes back. */
  notes: Int32Array;
  notesSize: number;
  notesStart: Int32Array;
  /** Facts that cannot hold together, as found last. */
  conflict: Int32Array;
  conflictSize: number;
  readonly clauses: Clauses;
  /** Cut c of variable x ("x <= c or x > c") is number cutOffset[x] + c, for c from its lowest value to below its highest. */
  readonly cutOffset: Int32Array;
  readonly cuts: number;
}

export const TRAIL_WIDTH = 7;
export const BOUND = 0;
export const OLD = 1;
export const PREVIOUS = 2;
export const REASON = 3;
export const DETAIL = 4;
export const EXTRA = 5;
export const LEVEL = 6;

/** Why a bound rose. */
export const CHOSEN = 0;
export const BY_CLAUSE = 1;
export const BY_ARC = 2;
export const BY_GUARD = 3;
export const BY_PROFILE = 4;
export const BY_NOTE = 5;

/**
 * Clauses one after the other: [size, spread of levels, when last used, next 0, next 1, unused], then `size` facts of
 * which one must hold. Facts 0 and 1 are watched: what makes one of them false leads to a chain of the clauses
 * watching it, through next 0 or next 1. A link of a chain is `begin + slot`; clauses begin at even places.
 */
export interface Clauses {
  text: Int32Array;
  textSize: number;
  /** Where each learnt clause begins. */
  learnt: number[];
  /** By fact: the chain of clauses to look at when it becomes true, or END_OF_CHAIN. */
  readonly chains: Int32Array;
  /** Counts conflicts; a clause keeps when it last explained something. */
  clock: number;
}

export const END_OF_CHAIN = -1;

export function createStore(lowest: Int32Array, highest: Int32Array): Store {
  const variables = lowest.length;
  const value = new Int32Array(2 * variables);
  for (let x = 0; x < variables; x++) {
    value[2 * x] = int(lowest, x);
    value[2 * x + 1] = -int(highest, x);
  }
  const cutOffset = new Int32Array(variables);
  let cuts = 0;
  for (let x = 0; x < variables; x++) {
    cutOffset[x] = cuts - int(lowest, x);
    cuts += Math.max(0, int(highest, x) - int(lowest, x));
  }
  return {
    variables,
    value,
    root: value.slice(),
    followed: value.slice(),
    latest: new Int32Array(2 * variables).fill(-1),
    trail: new Int32Array(TRAIL_WIDTH * 1024),
    trailSize: 0,
    head: 0,
    level: 0,
    levelStart: new Int32Array(64),
    notes: new Int32Array(4096),
    notesSize: 0,
    notesStart: new Int32Array(64),
    conflict: new Int32Array(64),
    conflictSize: 0,
    clauses: {
      text: new Int32Array(4096),
      textSize: 0,
      learnt: [],
      chains: new Int32Array(2 * cuts).fill(END_OF_CHAIN),
      clock: 0,
    },
    cutOffset,
    cuts,
  };
}

export function low(s: Store, x: number): number {
  return int(s.value, 2 * x);
}

export function high(s: Store, x: number): number {
  return -int(s.value, 2 * x + 1);
}

/** Raises a bound if it lies lower; false if lower and upper bound cross, with `conflict` filled. */
export function raise(s: Store, bound: number, to: number, reason: number, detail: number, extra: number): boolean {
  const old = int(s.value, bound);
  if (to <= old) return true;
  const place = s.trailSize;
  const at = place * TRAIL_WIDTH;
  if (at + TRAIL_WIDTH > s.trail.length) s.trail = roomFor(s.trail, at + TRAIL_WIDTH);
  const trail = s.trail;
  trail[at + BOUND] = bound;
  trail[at + OLD] = old;
  trail[at + PREVIOUS] = int(s.latest, bound);
  trail[at + REASON] = reason;
  trail[at + DETAIL] = detail;
  trail[at + EXTRA] = extra;
  trail[at + LEVEL] = s.level;
  s.trailSize = place + 1;
  s.value[bound] = to;
  s.latest[bound] = place;
  const opposite = int(s.value, bound ^ 1);
  if (to + opposite <= 0) return true;
  s.conflictSize = 0;
  addConflict(s, bound, 1 - opposite);
  addConflict(s, bound ^ 1, opposite);
  return false;
}

export function addConflict(s: Store, bound: number, value: number): void {
  const size = s.conflictSize;
  s.conflict = roomFor(s.conflict, size + 2);
  s.conflict[size] = bound;
  s.conflict[size + 1] = value;
  s.conflictSize = size + 2;
}

/** Writes one number of a reason; returns where. */
export function note(s: Store, number: number): number {
  const place = s.notesSize;
  if (place >= s.notes.length) s.notes = roomFor(s.notes, place + 1);
  s.notes[place] = number;
  s.notesSize = place + 1;
  return place;
}

export function openLevel(s: Store): void {
  s.level += 1;
  s.levelStart = roomFor(s.levelStart, s.level + 1);
  s.levelStart[s.level] = s.trailSize;
  s.notesStart = roomFor(s.notesStart, s.level + 1);
  s.notesStart[s.level] = s.notesSize;
}

/** Takes back everything above `level`. */
export function undoTo(s: Store, level: number): void {
  if (level >= s.level) return;
  const keep = int(s.levelStart, level + 1);
  const { trail, value, latest, followed } = s;
  for (let place = s.trailSize - 1; place >= keep; place--) {
    const at = place * TRAIL_WIDTH;
    const bound = int(trail, at + BOUND);
    const old = int(trail, at + OLD);
    value[bound] = old;
    followed[bound] = old;
    latest[bound] = int(trail, at + PREVIOUS);
  }
  s.trailSize = keep;
  s.head = keep;
  s.notesSize = int(s.notesStart, level + 1);
  s.level = level;
}

/** What holds now at level 0 holds for good and needs no reason any more. */
export function settleRoot(s: Store): void {
  for (let place = 0; place < s.trailSize; place++) s.latest[int(s.trail, place * TRAIL_WIDTH + BOUND)] = -1;
  s.trailSize = 0;
  s.head = 0;
  s.notesSize = 0;
  s.root.set(s.value);
}

/** Place on the trail where the fact (bound, value), which holds now, became true; -1 if at level 0. */
export function placeOf(s: Store, bound: number, value: number): number {
  const trail = s.trail;
  let place = int(s.latest, bound);
  while (place >= 0 && int(trail, place * TRAIL_WIDTH + OLD) >= value)
    place = int(trail, place * TRAIL_WIDTH + PREVIOUS);
  return place;
}

/** Number of the cut that the fact (bound, value) is one side of. */
export function cutOf(s: Store, bound: number, value: number): number {
  return int(s.cutOffset, bound >> 1) + ((bound & 1) === 0 ? value - 1 : -value);
}

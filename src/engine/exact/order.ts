import { int } from '../../typed.ts';
import type { Store } from './store.ts';

/**
 * Which cut "x <= c or x > c" to choose next: those that took part in recent conflicts come first. Cuts enter the
 * heap when they first take part in one.
 */
export interface Order {
  /** Variable of each cut (see `Store.cutOffset`). */
  readonly owner: Int32Array;
  readonly activity: Float64Array;
  /** Place in `heap`, -1 if not in it. */
  readonly place: Int32Array;
  readonly heap: Int32Array;
  size: number;
  bump: number;
  /** Cuts taken out because they were decided, and from where on in each level. */
  readonly out: number[];
  readonly outStart: number[];
}

const LARGEST = 1e100;

export function createOrder(s: Store): Order {
  const { cuts } = s;
  const owner = new Int32Array(cuts);
  for (let x = 0; x < s.variables; x++) {
    const first = int(s.cutOffset, x);
    owner.fill(x, first + int(s.value, 2 * x), first - int(s.value, 2 * x + 1));
  }
  return {
    owner,
    activity: new Float64Array(cuts),
    place: new Int32Array(cuts).fill(-1),
    heap: new Int32Array(cuts),
    size: 0,
    bump: 1,
    out: [],
    outStart: [0],
  };
}

function weightOf(o: Order, cut: number): number {
  return o.activity[cut] ?? 0;
}

/** The cut took part in a conflict. */
export function bumpCut(o: Order, cut: number): void {
  const weight = weightOf(o, cut) + o.bump;
  o.activity[cut] = weight;
  if (weight > LARGEST) rescale(o);
  const place = int(o.place, cut);
  if (place < 0) insert(o, cut);
  else moveUp(o, place);
}

function rescale(o: Order): void {
  for (let cut = 0; cut < o.activity.length; cut++) o.activity[cut] = weightOf(o, cut) / LARGEST;
  o.bump /= LARGEST;
}

function insert(o: Order, cut: number): void {
  o.heap[o.size] = cut;
  o.place[cut] = o.size;
  o.size += 1;
  moveUp(o, o.size - 1);
}

function moveUp(o: Order, from: number): void {
  const { heap, place } = o;
  const cut = int(heap, from);
  const weight = weightOf(o, cut);
  let at = from;
  while (at > 0) {
    const parent = (at - 1) >> 1;
    const above = int(heap, parent);
    if (weightOf(o, above) >= weight) break;
    heap[at] = above;
    place[above] = at;
    at = parent;
  }
  heap[at] = cut;
  place[cut] = at;
}

function removeTop(o: Order): number {
  const { heap, place } = o;
  const top = int(heap, 0);
  place[top] = -1;
  o.size -= 1;
  if (o.size === 0) return top;
  const cut = int(heap, o.size);
  const weight = weightOf(o, cut);
  let at = 0;
  for (;;) {
    let child = 2 * at + 1;
    if (child >= o.size) break;
    if (child + 1 < o.size && weightOf(o, int(heap, child + 1)) > weightOf(o, int(heap, child))) child += 1;
    const below = int(heap, child);
    if (weightOf(o, below) <= weight) break;
    heap[at] = below;
    place[below] = at;
    at = child;
  }
  heap[at] = cut;
  place[cut] = at;
  return top;
}

/** The most active cut that is still open, or -1. Takes it out: tell `noticeTaken` once its level is open. */
export function nextCut(o: Order, s: Store): number {
  while (o.size > 0) {
    const cut = int(o.heap, 0);
    const x = int(o.owner, cut);
    const value = cut - int(s.cutOffset, x);
    removeTop(o);
    if (int(s.value, 2 * x) <= value && -int(s.value, 2 * x + 1) > value) return cut;
    o.out.push(cut);
  }
  return -1;
}

export function noticeTaken(o: Order, cut: number): void {
  o.out.push(cut);
}

export function openOrderLevel(o: Order, level: number): void {
  o.outStart[level] = o.out.length;
}

/** Puts back the cuts taken out above `level`. */
export function undoOrderTo(o: Order, level: number): void {
  const keep = o.outStart[level + 1] ?? 0;
  for (let k = o.out.length - 1; k >= keep; k--) {
    const cut = o.out[k] ?? 0;
    if (int(o.place, cut) < 0) insert(o, cut);
  }
  o.out.length = Math.min(o.out.length, keep);
}

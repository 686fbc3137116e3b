import { at } from '../../at.ts';
import type { Minute } from '../../time/span.ts';
import { ALWAYS, NEVER } from '../../time/time-map.ts';
import type { Labels } from '../labels.ts';
import { holdKinds, type Net, type NetMode, type NetUse } from '../net.ts';
import type { Slots } from '../slots.ts';
import { int, real } from '../../typed.ts';
import type { Naming } from './naming.ts';
import type { Branch } from './trees.ts';
import { floorOf, type Wait, waitOf } from '../waits.ts';
import { bucketLast, bucketOf, bucketStart, type Grid } from './grid.ts';

/** Starts of one kind of slots among which the cheapest of every bucket is sure to be, whatever the prices. */
export interface Knots {
  /** By bucket: index of its first knot; one more entry ends the last bucket. */
  readonly first: Int32Array;
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  /** By bucket: earliest end of a start in it; NEVER if it has no start. */
  readonly earliestEnd: Int32Array;
}

/** What a mode keeps of a resource past its end, whatever else is chosen. */
export interface Held {
  readonly resource: number;
  readonly units: number;
  /** By bucket: last start in it, and until when a start in it keeps the resource at least. */
  readonly last: Int32Array;
  readonly until: Int32Array;
}

/** What modes with the same slots and the same needs pay at given prices. */
export interface Shape {
  readonly knots: Knots;
  /** Needs from start to end. */
  readonly resources: readonly number[];
  readonly units: readonly number[];
  readonly held: readonly Held[];
  /** The same without what is held, priced before it; absent where nothing is. */
  readonly plain: Shape | undefined;
  /** By bucket: least price of a start in it; Infinity if it has none. Refilled for new prices. */
  readonly price: Float64Array;
  /** By bucket: the knot that has it. */
  readonly knot: Int32Array;
}

/** Shapes of all open modes, by mode; equal ones are one object. */
export function shapesOf(
  net: Net,
  labels: Labels,
  branches: readonly Branch[],
  grid: Grid,
  naming: Naming,
): { readonly shapes: readonly Shape[]; readonly byMode: readonly (Shape | undefined)[] } {
  const knots = new Map<Slots, Knots>();
  const known = new Map<string, Shape>();
  const remembered = (name: string, make: () => Shape): Shape => {
    const found = known.get(name);
    if (found !== undefined) return found;
    const made = make();
    known.set(name, made);
    return made;
  };
  const byMode = net.modes.map((mode) => {
    if (!labels.isOpen(mode.index)) return undefined;
    const own = knots.get(mode.slots) ?? knotsOf(mode.slots, grid);
    knots.set(mode.slots, own);
    const needs = needsOf(mode);
    const name = `${naming.number(mode.slots)}:${needs.join(';')}`;
    const plain = remembered(name, () => shapeOf(own, needs, [], undefined, grid));
    const holding = mode.uses.filter((use) => use.kind !== holdKinds.none);
    if (holding.length === 0) return plain;
    const held = holding.map((use) => ({ use, waits: waitsForNext(net, labels, branches, mode, use) }));
    const names = held.map(({ use, waits }) => [
      [use.resource, use.units, use.next < 0 ? 0 : 1, use.map === undefined ? 0 : naming.number(use.map)].join(','),
      ...waits.map((wait) => naming.wait(wait)),
    ]);
    return remembered([name, ...names.map((list) => list.join('+'))].join('|'), () => {
      const kept = held.map(({ use, waits }) => heldOf(grid, own, use, waits));
      return shapeOf(own, needs, kept, plain, grid);
    });
  });
  return { shapes: [...known.values()], byMode };
}

function shapeOf(
  knots: Knots,
  needs: readonly [number, number][],
  held: readonly Held[],
  plain: Shape | undefined,
  grid: Grid,
): Shape {
  return {
    knots,
    resources: needs.map(([resource]) => resource),
    units: needs.map(([, units]) => units),
    held,
    plain,
    price: new Float64Array(grid.count),
    knot: plain?.knot ?? new Int32Array(grid.count),
  };
}

/** By class of the one that takes over: what keeps it waiting. */
function waitsForNext(net: Net, labels: Labels, branches: readonly Branch[], mode: NetMode, { next }: NetUse): Wait[] {
  return next < 0 || next === mode.activity
    ? []
    : at(branches, next).classes.map((modes) => waitOf(net, labels, mode, modes));
}

/** What `use` keeps at least, from a start in each bucket. */
function heldOf(grid: Grid, knots: Knots, use: NetUse, waits: readonly Wait[]): Held {
  const last = new Int32Array(grid.count);
  const until = new Int32Array(grid.count);
  for (let b = 0; b < grid.count; b++) {
    const first = int(knots.first, b);
    const end = int(knots.first, b + 1);
    if (first === end) continue;
    const ended = int(knots.earliestEnd, b);
    const starts = { first: int(knots.starts, first), last: int(knots.starts, end - 1) };
    const ends = { first: ended, last: int(knots.ends, end - 1) };
    const floor = use.next < 0 ? NEVER : Math.min(NEVER, ...waits.map((wait) => floorOf(wait, starts, ends)));
    const byMap = use.map === undefined ? NEVER : use.map.at(ended);
    last[b] = starts.last;
    until[b] = Math.max(ended, Math.min(byMap, waits.length === 0 && use.next >= 0 ? ended : floor));
  }
  return { resource: use.resource, units: use.units, last, until };
}

/** Resources and units that a mode needs from its start to its end and no longer. */
function needsOf(mode: NetMode): [number, number][] {
  if (mode.slots.duration === 0) return [];
  const units = new Map<number, number>();
  for (const use of mode.uses)
    if (use.kind === holdKinds.none) units.set(use.resource, (units.get(use.resource) ?? 0) + use.units);
  return [...units].sort((a, b) => a[0] - b[0]);
}

function knotsOf(slots: Slots, grid: Grid): Knots {
  const inBucket: Set<Minute>[] = Array.from({ length: grid.count }, () => new Set<Minute>());
  const add = (t: Minute): void => {
    if (t !== NEVER && t !== ALWAYS) at(inBucket, bucketOf(grid, t)).add(t);
  };
  for (let b = 0; b < grid.count; b++) {
    const start = slots.fit(bucketStart(grid, b));
    if (start > bucketLast(grid, b)) continue;
    add(start);
    if (b < grid.count - 1) add(slots.fitBack(bucketLast(grid, b)));
    if (b > 0) {
      // Where the end passes an edge, the price of the last minutes changes.
      add(slots.latestStart(int(grid.edges, b)));
      add(slots.earliestStart(int(grid.edges, b) + 1));
    }
  }
  for (let b = 1; b < grid.count; b++) {
    const passing = slots.latestStart(int(grid.edges, b));
    add(passing);
    if (passing !== ALWAYS) add(slots.fit(passing + 1));
  }
  for (let k = 0; k < slots.domain.count; k++) {
    add(slots.fit(int(slots.domain.starts, k)));
    add(slots.fitBack(int(slots.domain.ends, k) - 1));
  }
  const first = new Int32Array(grid.count + 1);
  const starts: number[] = [];
  inBucket.forEach((set, b) => {
    starts.push(...[...set].sort((x, y) => x - y));
    first[b + 1] = starts.length;
  });
  const earliestEnd = new Int32Array(grid.count).fill(NEVER);
  for (let b = 0; b < grid.count; b++)
    if (int(first, b) < int(first, b + 1)) earliestEnd[b] = slots.end(at(starts, int(first, b)));
  return {
    first,
    starts: Int32Array.from(starts),
    ends: Int32Array.from(starts, (t) => slots.end(t)),
    earliestEnd,
  };
}

/** Refills the prices of `shape`; `sums` has by resource the sum of prices before each minute since the grid's start. `holds`: charge for what is kept past the end. */
export function priceShape(shape: Shape, grid: Grid, sums: readonly Float64Array[], holds: boolean, from = 0): void {
  if (shape.plain !== undefined) {
    priceHeld(shape, shape.plain, grid, sums, holds, from);
    return;
  }
  const { first, starts, ends } = shape.knots;
  const last = grid.to - grid.from;
  for (let b = from; b < grid.count; b++) {
    let least = Infinity;
    let chosen = -1;
    for (let k = int(first, b); k < int(first, b + 1); k++) {
      const start = Math.min(last, Math.max(0, int(starts, k) - grid.from));
      const end = Math.min(last, Math.max(0, int(ends, k) - grid.from));
      let price = 0;
      for (let r = 0; r < shape.resources.length; r++) {
        const sum = at(sums, at(shape.resources, r));
        price += at(shape.units, r) * (real(sum, end) - real(sum, start));
      }
      if (price < least) {
        least = price;
        chosen = k;
      }
    }
    shape.price[b] = least;
    shape.knot[b] = chosen;
  }
}

function priceHeld(
  shape: Shape,
  plain: Shape,
  grid: Grid,
  sums: readonly Float64Array[],
  holds: boolean,
  from: number,
): void {
  shape.price.set(plain.price);
  if (!holds) return;
  for (const held of shape.held)
    for (let b = from; b < grid.count; b++)
      if (int(shape.knot, b) >= 0) shape.price[b] = real(shape.price, b) + heldPrice(held, b, grid, sums);
}

function heldPrice(held: Held, b: number, grid: Grid, sums: readonly Float64Array[]): number {
  const from = Math.max(0, int(held.last, b) - grid.from);
  const until = Math.min(grid.to, int(held.until, b)) - grid.from;
  if (until <= from) return 0;
  const sum = at(sums, held.resource);
  return held.units * (real(sum, until) - real(sum, from));
}

import { int } from '../../typed.ts';
import { groupBy } from './ints.ts';
import type { Rows } from './ints.ts';
import type { Model } from './model.ts';

/** What it takes to lay activities one after the other onto the resources. */
export interface Placer {
  readonly model: Model;
  /** Arcs into and out of each activity. */
  readonly into: Rows;
  readonly outOf: Rows;
  readonly needFirst: Int32Array;
  readonly needResource: Int32Array;
  readonly needUnits: Int32Array;
  /** usage[r * periods + t] of the schedule being laid. */
  readonly usage: Int32Array;
  readonly periods: number;
}

export function createPlacer(model: Model): Placer {
  const { activities, arcs, duration } = model;
  const flat = model.needs.flatMap((needs, activity) => needs.map((need) => ({ activity, ...need })));
  let periods = 1;
  for (let i = 0; i < activities; i++) periods = Math.max(periods, int(model.latest, i) + int(duration, i) + 1);
  return {
    model,
    into: groupBy(arcs.to, activities),
    outOf: groupBy(arcs.from, activities),
    needFirst: groupBy(
      Int32Array.from(flat, (need) => need.activity),
      activities,
    ).first,
    needResource: Int32Array.from(flat, (need) => need.resource),
    needUnits: Int32Array.from(flat, (need) => need.units),
    usage: new Int32Array(model.capacity.length * periods),
    periods,
  };
}

/** An order in which every arc goes forward, or undefined if there are cycles (maximum lags make them). */
export function forwardOrder(placer: Placer): Int32Array | undefined {
  const { arcs, activities } = placer.model;
  const { first, items } = placer.outOf;
  const open = new Int32Array(activities);
  for (const to of arcs.to) open[to] = int(open, to) + 1;
  const order = [...open.keys()].filter((i) => int(open, i) === 0);
  // Grows while it is walked.
  for (const from of order) {
    for (let a = int(first, from); a < int(first, from + 1); a++) {
      const to = int(arcs.to, int(items, a));
      open[to] = int(open, to) - 1;
      if (int(open, to) === 0) order.push(to);
    }
  }
  return order.length === activities ? Int32Array.from(order) : undefined;
}

/** Lays activities in `order`, each as early as it fits; false if one runs out of the horizon. */
export function placeForward(placer: Placer, order: Int32Array, starts: Int32Array): boolean {
  const { model, into, periods } = placer;
  const { from, weight } = model.arcs;
  placer.usage.fill(0);
  for (const activity of order) {
    let start = int(model.earliest, activity);
    const end = int(into.first, activity + 1);
    for (let a = int(into.first, activity); a < end; a++) {
      const arc = int(into.items, a);
      start = Math.max(start, int(starts, int(from, arc)) + int(weight, arc));
    }
    const duration = int(model.duration, activity);
    for (let moved = true; moved;) {
      if (start > int(model.latest, activity)) return false;
      const full = fullPeriod(placer, activity, start, start + duration, -1);
      moved = full >= 0;
      if (moved) start = full + 1;
    }
    starts[activity] = start;
    occupy(placer, activity, start, Math.min(periods, start + duration));
  }
  return true;
}

/** Lays activities in `order`, last ones first, each as late as it fits before `end`; false if there is no room. */
export function placeBackward(placer: Placer, order: Int32Array, starts: Int32Array, end: number): boolean {
  const { model, outOf } = placer;
  const { to, weight } = model.arcs;
  placer.usage.fill(0);
  for (const activity of order) {
    const duration = int(model.duration, activity);
    let start = Math.min(end - duration, int(model.latest, activity));
    const last = int(outOf.first, activity + 1);
    for (let a = int(outOf.first, activity); a < last; a++) {
      const arc = int(outOf.items, a);
      start = Math.min(start, int(starts, int(to, arc)) - int(weight, arc));
    }
    for (let moved = true; moved;) {
      if (start < int(model.earliest, activity)) return false;
      const full = fullPeriod(placer, activity, start, start + duration, 1);
      moved = full >= 0;
      if (moved) start = full - duration;
    }
    starts[activity] = start;
    occupy(placer, activity, start, start + duration);
  }
  return true;
}

/** The first period in [begin, end), or the last (`step` -1), in which the activity does not fit; -1 if there is none. */
function fullPeriod(placer: Placer, activity: number, begin: number, end: number, step: 1 | -1): number {
  const { usage, periods, model } = placer;
  const last = int(placer.needFirst, activity + 1);
  for (let k = int(placer.needFirst, activity); k < last; k++) {
    const resource = int(placer.needResource, k);
    const limit = int(model.capacity, resource) - int(placer.needUnits, k);
    const row = resource * periods;
    for (let t = step > 0 ? begin : end - 1; t >= begin && t < end; t += step)
      if (int(usage, row + t) > limit) return t;
  }
  return -1;
}

function occupy(placer: Placer, activity: number, begin: number, end: number): void {
  const { usage, periods } = placer;
  const last = int(placer.needFirst, activity + 1);
  for (let k = int(placer.needFirst, activity); k < last; k++) {
    const row = int(placer.needResource, k) * periods;
    const units = int(placer.needUnits, k);
    for (let t = row + begin; t < row + end; t++) usage[t] = int(usage, t) + units;
  }
}

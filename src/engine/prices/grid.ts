import { at } from '../../at.ts';
import type { Minute } from '../../time/span.ts';
import { ALWAYS, NEVER } from '../../time/time-map.ts';
import { holdKinds, type Net } from '../net.ts';
import type { Slots } from '../slots.ts';
import { byte, int } from '../../typed.ts';

/**
 * Time cut into buckets: the first takes in all before it, the last all after it. Where work can begin or must end is
 * an edge, so that inside a bucket everything runs straight.
 */
export interface Grid {
  readonly from: Minute;
  readonly to: Minute;
  readonly count: number;
  /** Start of each bucket; the first is `from`, the last `to`. */
  readonly edges: Int32Array;
  /** By minute since `from`: its bucket. */
  readonly bucketAt: Int32Array;
}

/** Minutes since `from`. */
export interface OpenMinutes {
  /** By resource and minute: can any mode need the resource then? */
  readonly needed: readonly Uint8Array[];
  /** By minute: can anything be at work then? */
  readonly working: Uint8Array;
  /** By minute: 1 where work can begin or must end. */
  readonly isEdge: Uint8Array;
  /** How many such minutes there are: no grid has fewer buckets. */
  readonly edges: number;
}

/** When anything that needs a resource can be at work, or, where any keeps it after its end, always. */
export function openMinutes(net: Net, from: Minute, to: Minute): OpenMinutes {
  const needed = Array.from(net.capacity, () => new Uint8Array(to - from));
  const working = new Uint8Array(to - from);
  const done = needed.map(() => new Set<Slots>());
  const held = new Set<number>();
  for (const mode of net.modes)
    for (const use of mode.uses) {
      const minutes = at(needed, use.resource);
      if (use.kind !== holdKinds.none && !held.has(use.resource)) {
        held.add(use.resource);
        minutes.fill(1);
      }
      const slots = at(done, use.resource);
      if (slots.has(mode.slots)) continue;
      slots.add(mode.slots);
      forWork(mode.slots, from, to, (start, end) => {
        minutes.fill(1, start - from, end - from);
        working.fill(1, start - from, end - from);
      });
    }
  const isEdge = edgesOf(net, [...needed, working], from, to);
  return { needed, working, isEdge, edges: isEdge.reduce((sum, one) => sum + one, 0) };
}

function edgesOf(net: Net, open: readonly Uint8Array[], from: Minute, to: Minute): Uint8Array {
  const isEdge = new Uint8Array(to - from + 1);
  for (const minutes of open)
    for (let t = 1; t < minutes.length; t++) if (byte(minutes, t) !== byte(minutes, t - 1)) isEdge[t] = 1;
  const calendars = new Set(net.modes.map((mode) => mode.slots.calendar));
  for (const calendar of calendars) {
    if (calendar === undefined) continue;
    for (let k = 0; k < calendar.count; k++)
      for (const t of [int(calendar.starts, k), int(calendar.ends, k)]) if (t > from && t < to) isEdge[t - from] = 1;
  }
  return isEdge;
}

/** Calls `each` with every stretch within `from` and `to` in which work by `slots` can go on. */
function forWork(slots: Slots, from: Minute, to: Minute, each: (start: Minute, end: Minute) => void): void {
  const spans = slots.calendar ?? slots.domain;
  const longer = slots.calendar === undefined ? slots.duration - 1 : 0;
  for (let k = 0; k < spans.count; k++) {
    const start = Math.max(from, int(spans.starts, k));
    const end = Math.min(to, int(spans.ends, k) + longer);
    if (start < end) each(start, end);
  }
}

/** Cuts `from` until `to` into buckets, at most `length` minutes long while anything is open. */
export function gridOf({ isEdge, working }: OpenMinutes, from: Minute, to: Minute, length: number): Grid {
  const edges: number[] = [from];
  const bucketAt = new Int32Array(to - from + 1);
  for (let t = 0; t < to - from; t++) {
    const sinceEdge = from + t - at(edges, edges.length - 1);
    if (t > 0 && (isEdge[t] === 1 || (sinceEdge >= length && working[t] === 1))) edges.push(from + t);
    bucketAt[t] = edges.length - 1;
  }
  edges.push(to);
  bucketAt[to - from] = edges.length - 1;
  return { from, to, count: edges.length, edges: Int32Array.from(edges), bucketAt };
}

/** The bucket of minute `t`. */
export function bucketOf(grid: Grid, t: Minute): number {
  if (t <= grid.from) return 0;
  return t >= grid.to ? grid.count - 1 : int(grid.bucketAt, t - grid.from);
}

/** First minute of bucket `b`; ALWAYS for the first bucket. */
export function bucketStart(grid: Grid, b: number): Minute {
  return b === 0 ? ALWAYS : int(grid.edges, b);
}

/** Last minute of bucket `b`; NEVER for the last bucket. */
export function bucketLast(grid: Grid, b: number): Minute {
  return b === grid.count - 1 ? NEVER : int(grid.edges, b + 1) - 1;
}

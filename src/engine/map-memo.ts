import type { Minute } from '../time/span.ts';
import type { TimeMap } from '../time/time-map.ts';

const pageBits = 8;
const pageSize = 1 << pageBits;
const unknown = -2_147_483_648;

/** Pages of answers already asked for, by minute since `base`. */
type Pages = (Int32Array | undefined)[];

/**
 * A TimeMap that remembers its answers. One map serves many lags, and the search asks it for the same minutes over and
 * over, while its own answer takes a search through air and hours.
 */
export class MapMemo {
  /** The shift in minutes, where the map is a plain one; else `undefined`. */
  readonly shift: number | undefined;
  private readonly map: TimeMap | undefined;
  private readonly base: Minute;
  private readonly length: number;
  private images: Pages = [];
  private latests: Pages = [];
  private earliests: Pages = [];

  constructor(map: TimeMap | number, from: Minute, to: Minute) {
    this.shift = typeof map === 'number' ? map : undefined;
    this.map = typeof map === 'number' ? undefined : map;
    this.base = from - (((from % pageSize) + pageSize) % pageSize);
    this.length = to - this.base;
  }

  covers(from: Minute, to: Minute): boolean {
    return from >= this.base && to <= this.base + this.length;
  }

  /** The same map's memory over at least `from` to `to`: it knows what this one does. */
  widened(map: TimeMap, from: Minute, to: Minute): MapMemo {
    const wide = new MapMemo(map, Math.min(from, this.base), Math.max(to, this.base + this.length));
    const before = (this.base - wide.base) >> pageBits;
    const moved = (pages: Pages): Pages => [...new Array<undefined>(before), ...pages];
    wide.images = moved(this.images);
    wide.latests = moved(this.latests);
    wide.earliests = moved(this.earliests);
    return wide;
  }

  at(t: Minute): Minute {
    if (this.map === undefined) return t + (this.shift ?? 0);
    const k = t - this.base;
    if (k < 0 || k > this.length) return this.map.at(t);
    const page = pageOf(this.images, k >> pageBits);
    const known = page[k & (pageSize - 1)] ?? unknown;
    if (known !== unknown) return known;
    return (page[k & (pageSize - 1)] = this.map.at(t));
  }

  latest(limit: Minute): Minute {
    if (this.map === undefined) return limit - (this.shift ?? 0);
    const k = limit - this.base;
    if (k < 0 || k > this.length) return this.map.latest(limit);
    const page = pageOf(this.latests, k >> pageBits);
    const known = page[k & (pageSize - 1)] ?? unknown;
    if (known !== unknown) return known;
    return (page[k & (pageSize - 1)] = this.map.latest(limit));
  }

  earliest(floor: Minute): Minute {
    if (this.map === undefined) return floor - (this.shift ?? 0);
    const k = floor - this.base;
    if (k < 0 || k > this.length) return this.map.earliest(floor);
    const page = pageOf(this.earliests, k >> pageBits);
    const known = page[k & (pageSize - 1)] ?? unknown;
    if (known !== unknown) return known;
    return (page[k & (pageSize - 1)] = this.map.earliest(floor));
  }
}

const known = new WeakMap<TimeMap, MapMemo>();

/** The memory of `map` over at least `from` to `to`: problems in which it is asked share what they have asked for. */
export function memoOf(map: TimeMap, from: Minute, to: Minute): MapMemo {
  const found = known.get(map);
  if (found?.covers(from, to) === true) return found;
  const made = found?.widened(map, from, to) ?? new MapMemo(map, from, to);
  known.set(map, made);
  return made;
}

function pageOf(pages: Pages, index: number): Int32Array {
  return (pages[index] ??= new Int32Array(pageSize).fill(unknown));
}

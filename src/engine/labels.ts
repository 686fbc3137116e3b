import { at } from '../at.ts';
import type { Minute } from '../time/span.ts';
import { ALWAYS, NEVER } from '../time/time-map.ts';
import { positiveCycle } from './cycle.ts';
import type { Net, NetCondition, NetLag } from './net.ts';
import { byte, int } from '../typed.ts';

/** Reason of a bound that no lag set: the activity's own slots or the horizon. */
export const ownSlots = -1;

/** After so many raises of one activity its chain of reasons is searched for a cycle that cannot end. */
const raisesBeforeSearch = 40;

/**
 * Earliest and latest starts and ends of every activity, over all modes still open, by queue-based label correction
 * over lags, calendars and start domains; resources are left out. All labels lie in one list of cells with a trail, so
 * that a tree search can go back. Each activity keeps the lag that last moved it.
 */
export class Labels {
  readonly net: Net;
  /** By activity: the lag behind its earliest and its latest, or `ownSlots`. */
  readonly earliestReason: Int32Array;
  readonly latestReason: Int32Array;
  /** The activity left without a start, after `propagate` failed; else -1. */
  failed = -1;

  private readonly cells: Int32Array;
  private readonly open: Uint8Array;
  private readonly isBackToo: boolean;
  private readonly modeCount: number;
  private readonly trail: number[] = [];
  private keepTrail = false;
  private readonly queue: number[] = [];
  private readonly queued: Uint8Array;
  private readonly raises: Int32Array;
  /** By activity: lags posted by a tree search on top of the problem's own. */
  private readonly posted: NetLag[][];

  /** @param bounds whether the latest starts and ends are worked out from what follows, too: without these it holds less, and is cheaper. */
  constructor(net: Net, bounds: 'both' | 'earliest' = 'both') {
    this.net = net;
    this.isBackToo = bounds === 'both';
    this.modeCount = net.modes.length;
    this.cells = new Int32Array(4 * this.modeCount + 4 * net.count);
    this.open = new Uint8Array(this.modeCount).fill(1);
    this.earliestReason = new Int32Array(net.count).fill(ownSlots);
    this.latestReason = new Int32Array(net.count).fill(ownSlots);
    this.queued = new Uint8Array(net.count);
    this.raises = new Int32Array(net.count);
    this.posted = Array.from({ length: net.count }, () => []);
    for (let m = 0; m < this.modeCount; m++) this.begin(m);
    for (let i = 0; i < net.count; i++) this.gather(i);
    for (let i = 0; i < net.count; i++) this.enqueue(i);
  }

  earliestStart(i: number): Minute {
    return int(this.cells, 4 * this.modeCount + i);
  }
  latestStart(i: number): Minute {
    return int(this.cells, 4 * this.modeCount + this.net.count + i);
  }
  earliestEnd(i: number): Minute {
    return int(this.cells, 4 * this.modeCount + 2 * this.net.count + i);
  }
  latestEnd(i: number): Minute {
    return int(this.cells, 4 * this.modeCount + 3 * this.net.count + i);
  }
  /** Earliest start in mode `m` (numbered through). */
  first(m: number): Minute {
    return int(this.cells, m);
  }
  /** Latest start in mode `m`. */
  last(m: number): Minute {
    return int(this.cells, this.modeCount + m);
  }
  isOpen(m: number): boolean {
    return byte(this.open, m) === 1;
  }

  /** Draws all consequences; false if some activity is left without a start. */
  propagate(): boolean {
    let next = 0;
    while (next < this.queue.length && this.failed < 0) {
      const i = at(this.queue, next);
      next += 1;
      this.queued[i] = 0;
      for (const lag of at(this.net.touching, i)) this.apply(lag);
      for (const lag of at(this.posted, i)) this.apply(lag);
    }
    for (; next < this.queue.length; next++) this.queued[at(this.queue, next)] = 0;
    this.queue.length = 0;
    return this.failed < 0;
  }

  /** A place to come back to by `undoTo`. */
  mark(): number {
    this.keepTrail = true;
    return this.trail.length;
  }

  undoTo(mark: number): void {
    while (this.trail.length > mark) {
      const value = this.trail.pop() ?? 0;
      const cell = this.trail.pop() ?? 0;
      if (cell >= 0) this.cells[cell] = value;
      else this.open[-1 - cell] = 1;
    }
    this.failed = -1;
  }

  /** Adds a lag until `unpost`, the last posted first. */
  post(lag: NetLag): void {
    at(this.posted, lag.from).push(lag);
    if (lag.to !== lag.from) at(this.posted, lag.to).push(lag);
    this.apply(lag);
  }

  unpost(lag: NetLag): void {
    at(this.posted, lag.from).pop();
    if (lag.to !== lag.from) at(this.posted, lag.to).pop();
  }

  startFrom(i: number, floor: Minute, reason: number): void {
    if (floor <= this.earliestStart(i) || this.failed >= 0) return;
    for (let m = int(this.net.modeFirst, i); m < int(this.net.modeFirst, i + 1); m++)
      if (this.isOpen(m) && this.first(m) < floor) this.setFirst(m, at(this.net.modes, m).slots.fit(floor));
    this.moved(i, reason, this.earliestReason);
  }

  endFrom(i: number, floor: Minute, reason: number): void {
    if (floor <= this.earliestEnd(i) || this.failed >= 0) return;
    for (let m = int(this.net.modeFirst, i); m < int(this.net.modeFirst, i + 1); m++)
      if (this.isOpen(m) && int(this.cells, 2 * this.modeCount + m) < floor)
        this.setFirst(m, at(this.net.modes, m).slots.earliestStart(floor));
    this.moved(i, reason, this.earliestReason);
  }

  startBy(i: number, limit: Minute, reason: number): void {
    if (limit >= this.latestStart(i) || this.failed >= 0) return;
    for (let m = int(this.net.modeFirst, i); m < int(this.net.modeFirst, i + 1); m++)
      if (this.isOpen(m) && this.last(m) > limit) this.setLast(m, at(this.net.modes, m).slots.fitBack(limit));
    this.moved(i, reason, this.latestReason);
  }

  endBy(i: number, limit: Minute, reason: number): void {
    if (limit >= this.latestEnd(i) || this.failed >= 0) return;
    for (let m = int(this.net.modeFirst, i); m < int(this.net.modeFirst, i + 1); m++)
      if (this.isOpen(m) && int(this.cells, 3 * this.modeCount + m) > limit)
        this.setLast(m, at(this.net.modes, m).slots.latestStart(limit));
    this.moved(i, reason, this.latestReason);
  }

  /** Rules out mode `m`. */
  close(m: number): void {
    if (!this.isOpen(m)) return;
    this.shut(m);
    this.moved(at(this.net.modes, m).activity, ownSlots, this.earliestReason);
  }

  /** Rules out every mode of the activity but `m`. */
  choose(m: number): void {
    const i = at(this.net.modes, m).activity;
    for (let other = int(this.net.modeFirst, i); other < int(this.net.modeFirst, i + 1); other++)
      if (other !== m && this.isOpen(other)) this.shut(other);
    this.moved(i, ownSlots, this.earliestReason);
  }

  /** 1: holds for every open mode; 0: for some; -1: for none. */
  conditionHolds(condition: NetCondition): -1 | 0 | 1 {
    const first = int(this.net.modeFirst, condition.activity);
    let some = false;
    let all = true;
    for (let k = 0; k < condition.allowed.length; k++) {
      if (!this.isOpen(first + k)) continue;
      if (byte(condition.allowed, k) === 1) some = true;
      else all = false;
    }
    return !some ? -1 : all ? 1 : 0;
  }

  private begin(m: number): void {
    const slots = at(this.net.modes, m).slots;
    const first = slots.fit(ALWAYS);
    if (first === NEVER) {
      this.open[m] = 0;
      return;
    }
    this.cells[m] = first;
    this.cells[this.modeCount + m] = slots.last;
    this.cells[2 * this.modeCount + m] = slots.end(first);
    this.cells[3 * this.modeCount + m] = slots.end(slots.last);
  }

  private set(cell: number, value: number): void {
    if (this.keepTrail) this.trail.push(cell, int(this.cells, cell));
    this.cells[cell] = value;
  }

  private shut(m: number): void {
    if (this.keepTrail) this.trail.push(-1 - m, 1);
    this.open[m] = 0;
  }

  private setFirst(m: number, first: Minute): void {
    if (first > this.last(m)) {
      this.shut(m);
      return;
    }
    this.set(m, first);
    this.set(2 * this.modeCount + m, at(this.net.modes, m).slots.end(first));
  }

  private setLast(m: number, last: Minute): void {
    if (last < this.first(m)) {
      this.shut(m);
      return;
    }
    this.set(this.modeCount + m, last);
    this.set(3 * this.modeCount + m, at(this.net.modes, m).slots.end(last));
  }

  private enqueue(i: number): void {
    if (byte(this.queued, i) === 1) return;
    this.queued[i] = 1;
    this.queue.push(i);
  }

  /** Takes over a change in the modes of `i` and notes its reason. */
  private moved(i: number, reason: number, reasons: Int32Array): void {
    reasons[i] = reason;
    this.gather(i);
    this.enqueue(i);
    if (this.failed >= 0 || reasons !== this.earliestReason || this.keepTrail) return;
    const raises = int(this.raises, i) + 1;
    this.raises[i] = raises;
    if (raises % raisesBeforeSearch === 0 && positiveCycle(this.net, this.earliestReason, i) !== undefined)
      this.failed = i;
  }

  /** Labels of activity `i` from those of its open modes. */
  private gather(i: number): void {
    let start: Minute = NEVER;
    let end: Minute = NEVER;
    let lastStart: Minute = ALWAYS;
    let lastEnd: Minute = ALWAYS;
    for (let m = int(this.net.modeFirst, i); m < int(this.net.modeFirst, i + 1); m++) {
      if (!this.isOpen(m)) continue;
      start = Math.min(start, this.first(m));
      lastStart = Math.max(lastStart, this.last(m));
      end = Math.min(end, int(this.cells, 2 * this.modeCount + m));
      lastEnd = Math.max(lastEnd, int(this.cells, 3 * this.modeCount + m));
    }
    if (start === NEVER) {
      this.failed = i;
      return;
    }
    const cell = 4 * this.modeCount + i;
    this.set(cell, start);
    this.set(cell + this.net.count, lastStart);
    this.set(cell + 2 * this.net.count, end);
    this.set(cell + 3 * this.net.count, lastEnd);
  }

  private apply(lag: NetLag): void {
    let doubtful: NetCondition | undefined;
    for (const condition of lag.when) {
      const holds = this.conditionHolds(condition);
      if (holds < 0) return;
      if (holds === 1) continue;
      if (doubtful !== undefined) return;
      doubtful = condition;
    }
    if (doubtful === undefined) this.enforce(lag);
    else if (this.isBroken(lag)) this.forbid(doubtful);
  }

  private enforce(lag: NetLag): void {
    const { from, to, least, most, index } = lag;
    if (least !== undefined) {
      const floor = least.at(lag.fromEnd ? this.earliestEnd(from) : this.earliestStart(from));
      if (lag.toEnd) this.endFrom(to, floor, index);
      else this.startFrom(to, floor, index);
    }
    if (most !== undefined) {
      const floor = most.earliest(lag.toEnd ? this.earliestEnd(to) : this.earliestStart(to));
      if (lag.fromEnd) this.endFrom(from, floor, index);
      else this.startFrom(from, floor, index);
    }
    if (this.isBackToo) this.enforceBack(lag);
  }

  private enforceBack({ from, to, fromEnd, toEnd, least, most, index }: NetLag): void {
    if (least !== undefined && !this.isSettled(from)) {
      const limit = least.latest(toEnd ? this.latestEnd(to) : this.latestStart(to));
      if (fromEnd) this.endBy(from, limit, index);
      else this.startBy(from, limit, index);
    }
    if (most !== undefined) {
      const limit = most.at(fromEnd ? this.latestEnd(from) : this.latestStart(from));
      if (toEnd) this.endBy(to, limit, index);
      else this.startBy(to, limit, index);
    }
  }

  /** Is nothing left to choose of when it lies? Whether what waits for it can keep to that, the way forward says. */
  private isSettled(i: number): boolean {
    return this.earliestStart(i) === this.latestStart(i) && this.earliestEnd(i) === this.latestEnd(i);
  }

  /** Can `lag` not hold within the labels? */
  private isBroken(lag: NetLag): boolean {
    const earliest = lag.fromEnd ? this.earliestEnd(lag.from) : this.earliestStart(lag.from);
    const latest = lag.fromEnd ? this.latestEnd(lag.from) : this.latestStart(lag.from);
    if (
      lag.least !== undefined &&
      lag.least.at(earliest) > (lag.toEnd ? this.latestEnd(lag.to) : this.latestStart(lag.to))
    )
      return true;
    return (
      lag.most !== undefined &&
      lag.most.at(latest) < (lag.toEnd ? this.earliestEnd(lag.to) : this.earliestStart(lag.to))
    );
  }

  /** Rules out the modes that satisfy `condition`. */
  private forbid(condition: NetCondition): void {
    const first = int(this.net.modeFirst, condition.activity);
    for (let k = 0; k < condition.allowed.length; k++)
      if (byte(condition.allowed, k) === 1 && this.isOpen(first + k)) this.shut(first + k);
    this.moved(condition.activity, ownSlots, this.earliestReason);
  }
}

import { at } from '../at.ts';
import type { Minute } from '../time/span.ts';
import { ALWAYS, NEVER } from '../time/time-map.ts';
import type { Labels } from './labels.ts';
import { type FollowUp, followUps, reachOf, startInTime } from './follow-up.ts';
import { isActive, type Limits, limitsFor, lower, newLimits } from './limits.ts';
import type { NetLag, NetMode } from './net.ts';
import { type Plan } from './plan.ts';
import { seek } from './seek.ts';
import { byte, int, real } from '../typed.ts';

/** What stood in the way when an activity found no place: who would have to start (or end) no earlier than `floor`. */
interface Obstacle {
  activity: number;
  atEnd: boolean;
  floor: Minute;
  lag: NetLag | undefined;
}

/** Retries allowed on top of one try per activity, by activity and at all. */
const retriesEach = 20;
const retriesFree = 200;

/**
 * Places activities one after another, each at its earliest, between those already placed. Where one misses a window,
 * the activity that opened the window is moved just late enough and all placed after it are placed again; where the
 * window belongs to a mode (of a preparation, say), the other modes are tried first.
 */
export class Inserter {
  /** Placements tried so far. */
  steps = 0;
  /** By activity: mode to try first (numbered through), or -1. */
  readonly preferred: Int32Array;
  /** By activity: start to come near to, or ALWAYS for the earliest. */
  readonly wished: Int32Array;
  /** By activity: worth of one minute, to weigh mode costs against time. */
  readonly minuteWeight: Float64Array;
  /** Does what follows count when a start is chosen? Among very many activities this asks for too much to be moved again. */
  looksAhead = true;
  /** The activity that found no place when `insert` failed. */
  failed = -1;

  private readonly plan: Plan;
  private readonly labels: Labels;
  private readonly startFloor: Int32Array;
  private readonly endFloor: Int32Array;
  private readonly position: Int32Array;
  private readonly banned: Uint8Array;
  /** By activity: whether it has been brought forward in the order. */
  private readonly advanced: Uint8Array;
  private readonly limits: Limits = newLimits();
  private readonly lifted: number[] = [];
  /** Latest start that holds until the activity allow, and whose hold sets it. */
  private holdLimit: Minute = NEVER;
  private holdBlame = -1;
  private readonly pending = new Map<number, Obstacle>();
  private readonly followUp: (mode: NetMode) => FollowUp | undefined;

  constructor(plan: Plan, labels: Labels, minuteWeight: Float64Array) {
    const { count, modes } = plan.net;
    this.plan = plan;
    this.labels = labels;
    this.minuteWeight = minuteWeight;
    this.preferred = new Int32Array(count).fill(-1);
    this.wished = new Int32Array(count).fill(ALWAYS);
    this.startFloor = new Int32Array(count).fill(ALWAYS);
    this.endFloor = new Int32Array(count).fill(ALWAYS);
    this.position = new Int32Array(count).fill(-1);
    this.banned = new Uint8Array(modes.length);
    this.advanced = new Uint8Array(count);
    this.followUp = followUps(plan.net, labels);
  }

  /**
   * Places all of `list` in its order; false if it cannot, or if the plan's guide gets above `limit`. Then those placed so far stay
   * placed, for the caller to take out.
   */
  insert(list: readonly number[], limit: number): boolean {
    const order = [...list];
    for (let k = 0; k < order.length; k++) this.position[at(order, k)] = k;
    const done = this.run(order, limit);
    for (const i of order) {
      this.position[i] = -1;
      this.advanced[i] = 0;
      this.startFloor[i] = ALWAYS;
      this.endFloor[i] = ALWAYS;
      this.unban(i);
    }
    this.pending.clear();
    return done;
  }

  /** Where `i`, which is not placed, can first start in mode `m` from `floor` to `limit`; NEVER if nowhere. */
  firstStart(i: number, m: number, floor: Minute, limit: Minute): Minute {
    this.lift(i);
    this.limit(i, m);
    const { floor: first, limit: last } = this.limits;
    const start = seek(this.plan, m, Math.max(floor, first), Math.min(limit, last));
    this.putBack(i);
    return start;
  }

  private run(order: number[], limit: number): boolean {
    let budget = retriesFree + (1 + retriesEach) * order.length;
    for (let k = 0; k < order.length; budget--) {
      const i = at(order, k);
      this.failed = i;
      if (budget === 0) return false;
      if (this.placeBest(i)) {
        if (this.plan.guide > limit) return false;
        k += 1;
        continue;
      }
      const advanced = this.advance(order, k);
      const back = advanced < 0 ? this.giveWay(i, k) : advanced;
      if (back < 0) return false;
      this.takeOut(order, back, k);
      k = back;
    }
    return true;
  }

  /** Places `i` in the mode that ends soonest, costs counted; false if no mode finds a place. */
  private placeBest(i: number): boolean {
    this.steps += 1;
    this.lift(i);
    const wanted = int(this.preferred, i);
    let best = -1;
    let bestStart: Minute = NEVER;
    let bestScore = Infinity;
    if (wanted >= 0) {
      bestStart = this.startIn(i, wanted);
      // Who cannot have the mode at the wished time had better look at all of them.
      const wish = int(this.wished, i);
      if (bestStart !== NEVER && (wish === ALWAYS || bestStart <= wish)) best = wanted;
    }
    if (best < 0) {
      const first = int(this.plan.net.modeFirst, i);
      const last = int(this.plan.net.modeFirst, i + 1);
      for (let m = first; m < last; m++) {
        const start = this.startIn(i, m);
        if (start === NEVER) continue;
        const chosen = this.inTime(m, start);
        const score = last === first + 1 ? 0 : this.score(i, m, chosen.start, chosen.reach);
        if (score >= bestScore) continue;
        best = m;
        bestStart = chosen.start;
        bestScore = score;
      }
    }
    if (best < 0) {
      this.putBack(i);
      return false;
    }
    this.plan.place(i, best, bestStart);
    this.lifted.length = 0;
    return true;
  }

  private startIn(i: number, m: number): Minute {
    if (!this.labels.isOpen(m) || byte(this.banned, m) === 1) return NEVER;
    this.limit(i, m);
    if (this.limits.floor > this.limits.limit) return NEVER;
    const wish = int(this.wished, i);
    if (wish > this.limits.floor) {
      const start = seek(this.plan, m, wish, this.limits.limit);
      if (start !== NEVER) return start;
    }
    return seek(this.plan, m, this.limits.floor, this.limits.limit);
  }

  /** `start` in mode `m`, or a later one that spares what follows a window that shuts; and when what follows can come then. */
  private inTime(m: number, start: Minute): { readonly start: Minute; readonly reach: Minute } {
    const follow = this.looksAhead ? this.followUp(at(this.plan.net.modes, m)) : undefined;
    if (follow === undefined || this.plan.isPlaced(follow.activity)) return { start, reach: ALWAYS };
    const reach = reachOf(follow, start);
    const later = seek(this.plan, m, startInTime(follow, start), this.limits.limit);
    const laterReach = later === NEVER ? NEVER : reachOf(follow, later);
    return laterReach < reach ? { start: later, reach: laterReach } : { start, reach };
  }

  private limit(i: number, m: number): void {
    limitsFor(this.plan, this.labels, i, m, this.limits);
    const slots = at(this.plan.net.modes, m).slots;
    const floor = int(this.endFloor, i) === ALWAYS ? ALWAYS : slots.earliestStart(int(this.endFloor, i));
    this.limits.floor = Math.max(this.limits.floor, int(this.startFloor, i), floor);
    if (this.holdLimit < this.limits.limit)
      lower(this.limits, this.holdLimit, undefined, this.plan.net.uses[this.holdBlame]);
  }

  /**
   * The less the better: when `i` ends, or when what it makes way for can start, or else when what follows it can, at `reach`;
   * plus the mode's cost in minutes.
   */
  private score(i: number, m: number, start: Minute, reach: Minute): number {
    const mode = at(this.plan.net.modes, m);
    let ready = mode.slots.end(start);
    for (const lag of at(this.plan.net.touching, i)) {
      if (lag.to === i || this.plan.isPlaced(lag.to) || lag.when.length === 0) continue;
      if (lag.from !== i && !this.plan.isPlaced(lag.from)) continue;
      if (isActive(this.plan, lag, i, m)) ready = Math.max(ready, this.outlook(lag, i, start, ready));
    }
    return Math.max(reach, ready) + mode.cost / Math.max(real(this.minuteWeight, i), 1e-6);
  }

  /** When the far end of `lag` could come at the earliest if `i` ran from `start` to `end`; NEVER if its window shuts. */
  private outlook(lag: NetLag, i: number, start: Minute, end: Minute): Minute {
    const a =
      lag.from === i ? (lag.fromEnd ? end : start) : int(lag.fromEnd ? this.plan.ends : this.plan.starts, lag.from);
    const floor = Math.max(
      lag.least === undefined ? ALWAYS : lag.least.at(a),
      lag.toEnd ? this.labels.earliestEnd(lag.to) : Math.max(this.labels.earliestStart(lag.to), end),
    );
    const shut = lag.most === undefined ? NEVER : lag.most.at(a);
    let soonest: Minute = NEVER;
    for (let m = int(this.plan.net.modeFirst, lag.to); m < int(this.plan.net.modeFirst, lag.to + 1); m++) {
      if (!this.labels.isOpen(m)) continue;
      const slots = at(this.plan.net.modes, m).slots;
      const start = lag.toEnd ? slots.earliestStart(floor) : slots.fit(floor);
      if (start !== NEVER) soonest = Math.min(soonest, lag.toEnd ? slots.end(start) : start);
    }
    return soonest <= shut ? soonest : NEVER;
  }

  /** Ends what others hold until `i` starts at their own ends, and finds out how far they could hold it. */
  private lift(i: number): void {
    const { plan } = this;
    this.holdLimit = NEVER;
    this.holdBlame = -1;
    this.lifted.length = 0;
    for (const use of at(plan.net.heldUntil, i)) {
      if (!plan.isHolding(use)) continue;
      this.lifted.push(use.index, int(plan.until, use.index));
      plan.holdUntil(use, int(plan.ends, use.activity));
    }
    if (this.lifted.length === 0) return;
    // Those that hold one resource together leave each other less room: each is stretched before the next is asked.
    for (let k = 0; k < this.lifted.length; k += 2) {
      const use = at(plan.net.uses, at(this.lifted, k));
      const end = int(plan.ends, use.activity);
      const full = at(plan.inUse, use.resource).fullFrom(end, int(plan.net.capacity, use.resource) - use.units);
      const farthest = use.map === undefined ? NEVER : use.map.at(end);
      if (full < farthest && full < this.holdLimit) {
        this.holdLimit = full;
        this.holdBlame = use.index;
      }
      plan.holdUntil(use, Math.max(end, Math.min(full, farthest)));
    }
    for (let k = 0; k < this.lifted.length; k += 2) {
      const use = at(plan.net.uses, at(this.lifted, k));
      plan.holdUntil(use, int(plan.ends, use.activity));
    }
  }

  private putBack(i: number): void {
    for (let k = 0; k < this.lifted.length; k += 2)
      this.plan.holdUntil(at(this.plan.net.uses, at(this.lifted, k)), at(this.lifted, k + 1));
    this.lifted.length = 0;
    this.failed = i;
  }

  /**
   * Brings the activity at position `k`, which found no place, forward in the order to right behind the last of those
   * that it has lags with, once: what was placed between may have taken its place. Answers the position to go on from, -1
   * if that changes nothing.
   */
  private advance(order: number[], k: number): number {
    const i = at(order, k);
    if (byte(this.advanced, i) === 1) return -1;
    this.advanced[i] = 1;
    let behind = -1;
    for (const lag of at(this.plan.net.touching, i)) {
      behind = Math.max(behind, this.placedBefore(lag.from, k), this.placedBefore(lag.to, k));
      for (const { activity } of lag.when) behind = Math.max(behind, this.placedBefore(activity, k));
    }
    const goal = behind + 1;
    if (goal >= k) return -1;
    this.takeOut(order, goal, k);
    order.copyWithin(goal + 1, goal, k);
    order[goal] = i;
    for (let p = goal; p <= k; p++) this.position[at(order, p)] = p;
    return goal;
  }

  /** Takes out those from position `from` to before `to` that are placed. */
  private takeOut(order: readonly number[], from: number, to: number): void {
    for (let p = to - 1; p >= from; p--) if (this.plan.isPlaced(at(order, p))) this.plan.remove(at(order, p));
  }

  /** The position of `i` if that comes before `k`, else -1. */
  private placedBefore(i: number, k: number): number {
    const position = int(this.position, i);
    return position < k ? position : -1;
  }

  /**
   * Makes room for `i`, which found no place at position `k`: bans a mode or moves the least it must what stands in the
   * way. Answers the position to go on from, -1 if nothing helps.
   */
  private giveWay(i: number, k: number): number {
    let obstacle = this.obstacleOf(i) ?? this.pending.get(i);
    if (obstacle === undefined) return -1;
    if (this.pending.has(i)) return this.move(this.sooner(obstacle, i), k);
    // The later placed first: a preparation's window is changed before the coat that opened it.
    const choices = (obstacle.lag?.when ?? []).map((condition) => condition.activity);
    for (const p of choices.sort((a, b) => int(this.position, b) - int(this.position, a))) {
      const position = int(this.position, p);
      if (position < 0 || position >= k) continue;
      obstacle = this.sooner(obstacle, p);
      if (!this.hasOtherMode(p)) continue;
      this.banned[int(this.plan.modes, p)] = 1;
      this.pending.set(p, obstacle);
      return position;
    }
    return this.move(obstacle, k);
  }

  private sooner(obstacle: Obstacle, i: number): Obstacle {
    const known = this.pending.get(i);
    return known !== undefined && known.floor < obstacle.floor ? known : obstacle;
  }

  /** Demands of the obstacle that it comes later, and forgets what was ruled out at its old place. */
  private move(obstacle: Obstacle, k: number): number {
    const { activity, atEnd, floor } = obstacle;
    const position = int(this.position, activity);
    if (position < 0 || position >= k || floor >= NEVER) return -1;
    const floors = atEnd ? this.endFloor : this.startFloor;
    if (floor <= int(atEnd ? this.plan.ends : this.plan.starts, activity)) return -1;
    floors[activity] = Math.max(int(floors, activity), floor);
    for (const p of [...this.pending.keys()]) if (int(this.position, p) > position) this.unban(p);
    return position;
  }

  private hasOtherMode(p: number): boolean {
    for (let m = int(this.plan.net.modeFirst, p); m < int(this.plan.net.modeFirst, p + 1); m++)
      if (m !== int(this.plan.modes, p) && this.labels.isOpen(m) && byte(this.banned, m) === 0) return true;
    return false;
  }

  private unban(p: number): void {
    if (this.pending.delete(p))
      this.banned.fill(0, int(this.plan.net.modeFirst, p), int(this.plan.net.modeFirst, p + 1));
  }

  /** What to move so that `i` finds a place in the mode that misses its limit by the least. */
  private obstacleOf(i: number): Obstacle | undefined {
    this.lift(i);
    let found: Obstacle | undefined;
    let least = Infinity;
    for (let m = int(this.plan.net.modeFirst, i); m < int(this.plan.net.modeFirst, i + 1); m++) {
      if (!this.labels.isOpen(m) || byte(this.banned, m) === 1) continue;
      this.limit(i, m);
      if (this.limits.lag === undefined && this.limits.hold === undefined) continue;
      const start = seek(this.plan, m, this.limits.floor, this.labels.last(m));
      if (start === NEVER || start - this.limits.limit >= least) continue;
      least = start - this.limits.limit;
      found = this.behindLimit(i, m, start);
    }
    this.putBack(i);
    return found;
  }

  /** What keeps `i` from starting at `start` in mode `m`. */
  private behindLimit(i: number, m: number, start: Minute): Obstacle {
    const { plan, limits } = this;
    const end = at(plan.net.modes, m).slots.end(start);
    const { lag, hold } = limits;
    if (lag !== undefined) {
      const a = lag.from === i ? (lag.fromEnd ? end : start) : int(lag.fromEnd ? plan.ends : plan.starts, lag.from);
      const b = lag.to === i ? (lag.toEnd ? end : start) : int(lag.toEnd ? plan.ends : plan.starts, lag.to);
      const tooEarly = lag.from === i || (lag.to !== i && lag.least !== undefined && lag.least.at(a) > b);
      return tooEarly
        ? { activity: lag.to, atEnd: lag.toEnd, floor: lag.least?.at(a) ?? NEVER, lag }
        : { activity: lag.from, atEnd: lag.fromEnd, floor: lag.most?.earliest(b) ?? NEVER, lag };
    }
    if (hold === undefined) return { activity: i, atEnd: false, floor: NEVER, lag };
    if (hold.activity === i) return { activity: hold.next, atEnd: false, floor: hold.map?.at(end) ?? NEVER, lag };
    const room = int(plan.net.capacity, hold.resource) - hold.units;
    const free = at(plan.inUse, hold.resource).freeFrom(this.holdLimit, this.holdLimit + 1, room);
    return { activity: hold.activity, atEnd: false, floor: free, lag };
  }
}

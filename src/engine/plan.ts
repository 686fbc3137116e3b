import { at } from '../at.ts';
import type { Minute } from '../time/span.ts';
import { costAt, type Costs } from './costs.ts';
import type { Net, NetPresence, NetUse } from './net.ts';
import { holdKinds } from './net.ts';
import type { Schedule } from './problem.ts';
import { Profile } from './profile.ts';
import { int, real } from '../typed.ts';

/** A schedule in the making: which activities are placed, and what is in use when. */
export class Plan {
  readonly net: Net;
  readonly costs: Costs;
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  /** By activity: its mode (numbered through), or -1 while it is not placed. */
  readonly modes: Int32Array;
  /** By use of a placed activity: until when it keeps its resource. */
  readonly until: Int32Array;
  readonly inUse: readonly Profile[];
  /** By exclusion: presences of either side. */
  readonly present: readonly (readonly [Profile, Profile])[];
  /** What the placed activities cost, plus the least that the others can. */
  value: number;
  /**
   * `value`, and a little for every end, the more the nearer to the end of its component. Objectives of shops move in
   * leaps (ready when the shop opens), so the search follows this, which falls before they do.
   */
  guide: number;
  private readonly earliest: Int32Array;
  /** By activity: what a minute of its end counts in `guide`. */
  private readonly pull: Float64Array;

  /** @param earliest by activity: when it can start at the earliest */
  constructor(net: Net, earliest: Int32Array, costs: Costs, pull: Float64Array) {
    this.net = net;
    this.costs = costs;
    this.starts = new Int32Array(net.count);
    this.ends = new Int32Array(net.count);
    this.modes = new Int32Array(net.count).fill(-1);
    this.until = new Int32Array(net.uses.length);
    this.inUse = net.problem.resources.map(() => new Profile());
    this.present = Array.from({ length: net.problem.exclusions }, () => [new Profile(), new Profile()] as const);
    this.value = costs.bound;
    this.guide = costs.bound;
    this.pull = pull;
    this.earliest = earliest;
  }

  isPlaced(i: number): boolean {
    return int(this.modes, i) >= 0;
  }

  /** Places activity `i`, which is not placed, at `start` in mode `m`; whether it fits is the caller's to know. */
  place(i: number, m: number, start: Minute): void {
    const mode = at(this.net.modes, m);
    const end = mode.slots.end(start);
    this.starts[i] = start;
    this.ends[i] = end;
    this.modes[i] = m;
    for (const use of mode.uses) {
      const until = this.holdEnd(use, end);
      this.until[use.index] = until;
      at(this.inUse, use.resource).add(start, until, use.units);
    }
    for (const presence of mode.presences) this.side(presence, presence.side).add(start, presenceEnd(presence, end), 1);
    for (const use of at(this.net.heldUntil, i))
      if (this.isHolding(use)) this.holdUntil(use, this.holdEnd(use, int(this.ends, use.activity)));
    const cost = costAt(this.net, this.costs, i, m, start, end) - real(this.costs.least, i);
    this.value += cost;
    this.guide += cost + real(this.pull, i) * (end - int(this.earliest, i));
  }

  /** Takes activity `i` out. What others hold until its start they go on holding until where that was. */
  remove(i: number): void {
    const m = int(this.modes, i);
    const start = int(this.starts, i);
    const end = int(this.ends, i);
    const mode = at(this.net.modes, m);
    const cost = costAt(this.net, this.costs, i, m, start, end) - real(this.costs.least, i);
    this.value -= cost;
    this.guide -= cost + real(this.pull, i) * (end - int(this.earliest, i));
    for (const use of mode.uses) at(this.inUse, use.resource).add(start, int(this.until, use.index), -use.units);
    for (const presence of mode.presences)
      this.side(presence, presence.side).add(start, presenceEnd(presence, end), -1);
    this.modes[i] = -1;
  }

  /** Is `use` that of a placed activity in its chosen mode? */
  isHolding(use: NetUse): boolean {
    return int(this.modes, use.activity) === use.mode;
  }

  /** Changes until when `use` of a placed activity keeps its resource. */
  holdUntil(use: NetUse, until: Minute): void {
    const before = int(this.until, use.index);
    const profile = at(this.inUse, use.resource);
    if (until > before) profile.add(before, until, use.units);
    else profile.add(until, before, -use.units);
    this.until[use.index] = until;
  }

  /** Until when `use` keeps its resource if its activity ends at `end`; as long as can be known, if `next` is open. */
  holdEnd(use: NetUse, end: Minute): Minute {
    if (use.kind === holdKinds.none) return end;
    const byMap = use.map === undefined ? end : use.map.at(end);
    if (use.kind === holdKinds.map) return Math.max(end, byMap);
    if (int(this.modes, use.next) < 0)
      return Math.max(end, use.kind === holdKinds.mapOrNext ? byMap : int(this.earliest, use.next));
    const next = int(this.starts, use.next);
    return Math.max(end, use.kind === holdKinds.mapOrNext ? Math.min(byMap, next) : next);
  }

  /** Another plan that is the same. */
  twin(): Plan {
    const made = new Plan(this.net, this.earliest, this.costs, this.pull);
    made.become(this);
    return made;
  }

  /** Makes this plan the same as `other`, a plan of the same net: sooner done than many of its places are put back. */
  become(other: Plan): void {
    this.starts.set(other.starts);
    this.ends.set(other.ends);
    this.modes.set(other.modes);
    this.until.set(other.until);
    this.inUse.forEach((profile, k) => {
      profile.become(at(other.inUse, k));
    });
    this.present.forEach((sides, k) => {
      for (const side of [0, 1] as const) sides[side].become(at(other.present, k)[side]);
    });
    this.value = other.value;
    this.guide = other.guide;
  }

  side(presence: NetPresence, side: 0 | 1): Profile {
    return at(this.present, presence.exclusion)[side];
  }

  /** The plan as a schedule; every activity must be placed. */
  schedule(): Schedule {
    return {
      starts: [...this.starts],
      ends: [...this.ends],
      modes: Array.from(this.modes, (m, i) => m - int(this.net.modeFirst, i)),
    };
  }
}

/** Until when a presence lasts whose activity ends at `end`. */
export function presenceEnd(presence: NetPresence, end: Minute): Minute {
  return presence.until === undefined ? end : Math.max(end, presence.until.at(end));
}

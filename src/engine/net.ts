import { at } from '../at.ts';
import { intersect, type Spans } from '../time/span.ts';
import type { TimeMap } from '../time/time-map.ts';
import { NEVER } from '../time/time-map.ts';
import { MapMemo, memoOf } from './map-memo.ts';
import type { Condition, Lag, Mode, Problem, Use } from './problem.ts';
import { Slots } from './slots.ts';
import { SpanIndex } from './span-index.ts';

/** `hold` of a use: none, or one of the three kinds of problem.ts. */
export const holdKinds = { none: 0, map: 1, next: 2, mapOrNext: 3 } as const;

/** What a lag demands of one activity: which modes of `activity` (by their place in it) satisfy it. */
export interface NetCondition {
  readonly activity: number;
  readonly allowed: Uint8Array;
}

export interface NetLag {
  readonly index: number;
  readonly from: number;
  readonly fromEnd: boolean;
  readonly to: number;
  readonly toEnd: boolean;
  readonly least: MapMemo | undefined;
  readonly most: MapMemo | undefined;
  readonly when: readonly NetCondition[];
}

export interface NetUse {
  readonly index: number;
  readonly activity: number;
  readonly mode: number;
  readonly resource: number;
  readonly units: number;
  readonly kind: number;
  readonly map: MapMemo | undefined;
  readonly next: number;
}

export interface NetPresence {
  readonly exclusion: number;
  readonly side: 0 | 1;
  readonly until: MapMemo | undefined;
}

/** Modes are numbered through: those of activity i are `modeFirst[i]` up to, not including, `modeFirst[i + 1]`. */
export interface NetMode {
  readonly index: number;
  readonly activity: number;
  readonly slots: Slots;
  readonly cost: number;
  readonly uses: readonly NetUse[];
  readonly presences: readonly NetPresence[];
  readonly usesResource: ReadonlySet<number>;
  /** Do several of its uses need the same resource? */
  readonly sharesResource: boolean;
  /** May it break a rule all by itself: a lag to itself, or presences of both sides? */
  readonly selfChecks: boolean;
}

/** A problem laid out for the search: numbered modes and uses, remembered maps, and who touches whom. */
export interface Net {
  readonly problem: Problem;
  readonly count: number;
  readonly modeFirst: Int32Array;
  readonly modes: readonly NetMode[];
  readonly uses: readonly NetUse[];
  readonly lags: readonly NetLag[];
  /** By activity: the lags that start or end in it or have a condition on it. */
  readonly touching: readonly (readonly NetLag[])[];
  /** By activity: the uses of others held until it starts. */
  readonly heldUntil: readonly (readonly NetUse[])[];
  readonly capacity: Int32Array;
}

/** Lays out `problem`. */
export function netOf(problem: Problem): Net {
  const memo = memos(problem);
  const slots = slotMaker(problem);
  const modeFirst = new Int32Array(problem.activities.length + 1);
  const modes: NetMode[] = [];
  const uses: NetUse[] = [];
  const selfTied = new Set(problem.lags.filter((lag) => lag.from === lag.to).map((lag) => lag.from));
  problem.activities.forEach((activity, i) => {
    for (const mode of activity.modes) {
      const own = mode.uses.map((use) => netUse(use, i, modes.length, uses, memo));
      const presences = mode.presences ?? [];
      const usesResource = new Set(mode.uses.map((use) => use.resource));
      modes.push({
        index: modes.length,
        activity: i,
        slots: slots(mode),
        cost: mode.cost ?? 0,
        uses: own,
        presences: presences.map((presence) => ({
          exclusion: presence.exclusion,
          side: presence.side,
          until: memo(presence.until),
        })),
        usesResource,
        sharesResource: usesResource.size < mode.uses.length,
        selfChecks: selfTied.has(i) || new Set(presences.map((presence) => presence.side)).size > 1,
      });
    }
    modeFirst[i + 1] = modes.length;
  });
  const lags = problem.lags.map((lag, index) => netLag(lag, index, problem, memo));
  return {
    problem,
    count: problem.activities.length,
    modeFirst,
    modes,
    uses,
    lags,
    touching: touchingLags(problem.activities.length, lags),
    heldUntil: heldUses(problem.activities.length, uses),
    capacity: Int32Array.from(problem.resources, (resource) => resource.capacity),
  };
}

type Memo = (map: TimeMap | number | undefined) => MapMemo | undefined;

/** One memory per map, however many lags share it. */
function memos({ from, to }: Problem): Memo {
  const shifts = new Map<number, MapMemo>();
  return (map) => {
    if (map === undefined) return undefined;
    return typeof map === 'number' ? remembered(shifts, map, () => new MapMemo(map, from, to)) : memoOf(map, from, to);
  };
}

function netUse(use: Use, activity: number, mode: number, all: NetUse[], memo: Memo): NetUse {
  const hold = use.hold;
  const made = {
    index: all.length,
    activity,
    mode,
    resource: use.resource,
    units: use.units,
    kind: holdKinds[hold?.kind ?? 'none'],
    map: hold === undefined || hold.kind === 'next' ? undefined : memo(hold.map),
    next: hold === undefined || hold.kind === 'map' ? -1 : hold.next,
  };
  all.push(made);
  return made;
}

function netLag(lag: Lag, index: number, problem: Problem, memo: Memo): NetLag {
  return {
    index,
    from: lag.from,
    fromEnd: lag.fromPoint === 'end',
    to: lag.to,
    toEnd: lag.toPoint === 'end',
    least: memo(lag.least),
    most: memo(lag.most),
    when: netConditions(lag.when ?? [], problem),
  };
}

/** One condition per activity: the modes that all of the lag's conditions on it allow. */
function netConditions(when: readonly Condition[], problem: Problem): NetCondition[] {
  return [...new Set(when.map((condition) => condition.activity))].map((activity) => {
    const own = when.filter((condition) => condition.activity === activity);
    const { modes } = at(problem.activities, activity);
    return { activity, allowed: Uint8Array.from(modes, (_, k) => (own.every((c) => c.modes.includes(k)) ? 1 : 0)) };
  });
}

function touchingLags(count: number, lags: readonly NetLag[]): NetLag[][] {
  const touching = Array.from({ length: count }, (): NetLag[] => []);
  for (const lag of lags) {
    for (const i of new Set([lag.from, lag.to, ...lag.when.map((c) => c.activity)])) at(touching, i).push(lag);
  }
  return touching;
}

function heldUses(count: number, uses: readonly NetUse[]): NetUse[][] {
  const held = Array.from({ length: count }, (): NetUse[] => []);
  for (const use of uses) if (use.next >= 0) at(held, use.next).push(use);
  return held;
}

/** Makes the slots of a mode; equal spans are laid out once. */
function slotMaker(problem: Problem): (mode: Mode) => Slots {
  const horizon: Spans = [{ start: problem.from, end: problem.to + 1 }];
  const indices = new Map<Spans, SpanIndex>();
  const domains = new Map<Spans, Map<Spans | undefined, SpanIndex>>();
  const made = new Map<SpanIndex, Map<SpanIndex | undefined, Map<number, Slots>>>();
  const indexOf = (spans: Spans): SpanIndex => remembered(indices, spans, () => new SpanIndex(spans));
  const domainOf = (starts: Spans, calendar: Spans | undefined): SpanIndex =>
    remembered(
      remembered(domains, starts, () => new Map<Spans | undefined, SpanIndex>()),
      calendar,
      () => (calendar === undefined ? indexOf(starts) : new SpanIndex(intersect(starts, calendar))),
    );
  const same = sharer();
  return (mode) => {
    const pauses = mode.calendar === undefined ? undefined : same(mode.calendar);
    const domain = domainOf(same(mode.starts ?? horizon), pauses);
    const calendar = pauses === undefined ? undefined : indexOf(pauses);
    const byCalendar = remembered(made, domain, () => new Map<SpanIndex | undefined, Map<number, Slots>>());
    const byDuration = remembered(byCalendar, calendar, () => new Map<number, Slots>());
    const duration = Math.min(mode.duration, NEVER);
    return remembered(byDuration, duration, () => new Slots(domain, calendar, duration, problem.to));
  };
}

/** Answers for equal spans always the same object, so that a thousand modes with one week share its layout. */
function sharer(): (spans: Spans) => Spans {
  const byObject = new Map<Spans, Spans>();
  const byHash = new Map<number, Spans[]>();
  return (spans) =>
    remembered(byObject, spans, () => {
      let hash = spans.length;
      for (const span of spans) hash = (Math.imul(hash, 31) + Math.imul(span.start, 7) + span.end) | 0;
      const alike = remembered(byHash, hash, (): Spans[] => []);
      const found = alike.find((other) => isEqual(spans, other));
      if (found === undefined) alike.push(spans);
      return found ?? spans;
    });
}

function isEqual(one: Spans, other: Spans): boolean {
  return (
    one.length === other.length && one.every((s, k) => s.start === at(other, k).start && s.end === at(other, k).end)
  );
}

function remembered<K, V>(known: Map<K, V>, key: K, make: () => V): V {
  const found = known.get(key);
  if (found !== undefined) return found;
  const made = make();
  known.set(key, made);
  return made;
}

import { at } from '../at.ts';
import type { Minute } from '../time/span.ts';
import { ALWAYS, NEVER } from '../time/time-map.ts';
import type { Labels } from './labels.ts';
import type { MapMemo } from './map-memo.ts';
import { holdKinds, type Net, type NetCondition, type NetLag, type NetMode } from './net.ts';
import type { Slots } from './slots.ts';
import { byte, int } from '../typed.ts';

/**
 * What keeps one activity waiting for another, both in given modes, whatever other modes are chosen. Where it hangs on
 * the mode of a further activity, or leads through it, the weakest of its modes counts; a mode whose window shuts before
 * the waiting one can start does not.
 */
export interface Wait {
  /** Slots of the waiting one's modes. */
  readonly slots: readonly Slots[];
  readonly always: Bonds;
  /** By further activity: the ways through its open modes. */
  readonly either: readonly (readonly Way[])[];
  /** What the one that comes after the waiting one waits for; absent unless they may as well start together. */
  readonly beyond: { readonly slots: readonly Slots[]; readonly bonds: Bonds } | undefined;
}

/** What joins the starts and ends of two activities. */
export interface Bonds {
  readonly lags: readonly NetLag[];
  /** Do the lags' `most` count, or only their `least`? */
  readonly shut: boolean;
  /** Until when what the earlier holds keeps the later from starting, by the earlier's end. */
  readonly holds: readonly MapMemo[];
}

/** What holds if a further activity has a mode of these slots: directly, and by way of it. */
export interface Way {
  readonly slots: Slots;
  readonly direct: Bonds;
  readonly into: Bonds;
  readonly onward: Bonds;
}

/** Where a start or an end may lie. */
export interface Stretch {
  readonly first: Minute;
  readonly last: Minute;
}

/** Modes that are chosen. */
type Fixed = readonly (readonly NetMode[])[];

/** Does `i` have any wait for `j`? */
export function isWaitedFor(net: Net, labels: Labels, i: number, j: number): boolean {
  if (i === j) return false;
  if (at(net.touching, i).some((lag) => isBetween(lag, i, j) && lag.least !== undefined)) return true;
  return openModes(net, labels, i).some((mode) => mode.uses.some((use) => use.next === j && use.map !== undefined));
}

/**
 * What keeps `parent`, which has one of the alike `parentModes`, waiting for an activity in `mode`.
 * @param after the activity that comes after the parent and that the parent may start together with, if there is one
 */
export function waitOf(net: Net, labels: Labels, mode: NetMode, parentModes: readonly NetMode[], after?: number): Wait {
  const child = mode.activity;
  const parent = at(parentModes, 0).activity;
  const fixed: Fixed = [[mode], parentModes];
  const lags = at(net.touching, child).filter(
    (lag) => isBetween(lag, child, parent) && doubts(net, labels, lag, fixed),
  );
  const certain = lags.filter((lag) => openOf(net, labels, lag, fixed).length === 0);
  const further = new Set(lags.flatMap((lag) => openOf(net, labels, lag, fixed).map((c) => c.activity)));
  for (const lag of at(net.touching, child))
    if (lag.from === child && lag.to !== parent && at(net.touching, lag.to).some((l) => isBetween(l, lag.to, parent)))
      further.add(lag.to);
  further.delete(child);
  further.delete(parent);
  return {
    slots: slotsOf(parentModes),
    always: { lags: certain, shut: after === undefined, holds: heldFor(mode, parent, parentModes) },
    either: [...further].map((p) => waysThrough(net, labels, p, mode, parentModes, after === undefined)),
    beyond:
      after === undefined
        ? undefined
        : { slots: slotsOf(openModes(net, labels, after)), bonds: bondsOf(net, labels, child, after, fixed, true) },
  };
}

/** One for each kind of open mode of `p`. */
function waysThrough(
  net: Net,
  labels: Labels,
  p: number,
  mode: NetMode,
  parentModes: readonly NetMode[],
  shut: boolean,
): Way[] {
  const ways: Way[] = [];
  const parent = at(parentModes, 0).activity;
  for (const through of openModes(net, labels, p)) {
    const fixed: Fixed = [[mode], parentModes, [through]];
    const into = bondsOf(net, labels, mode.activity, p, fixed, true);
    const way: Way = {
      slots: through.slots,
      direct: bondsOf(net, labels, mode.activity, parent, fixed, shut),
      into: { ...into, holds: heldFor(mode, p, [through]) },
      onward: bondsOf(net, labels, p, parent, fixed, shut),
    };
    if (!ways.some((known) => isAlike(known, way))) ways.push(way);
  }
  return ways;
}

/** The lags from `from` to `to` that are sure to hold with the modes in `fixed`. */
function bondsOf(net: Net, labels: Labels, from: number, to: number, fixed: Fixed, shut: boolean): Bonds {
  const lags = at(net.touching, from).filter(
    (lag) => isBetween(lag, from, to) && lag.when.every((c) => stateOf(net, labels, c, fixed) === 1),
  );
  return { lags, shut, holds: [] };
}

function isBetween(lag: NetLag, from: number, to: number): boolean {
  return lag.from === from && lag.to === to && !lag.toEnd;
}

/** May `lag` hold, and does it hang on one open condition at most? */
function doubts(net: Net, labels: Labels, lag: NetLag, fixed: Fixed): boolean {
  if (lag.when.some((c) => stateOf(net, labels, c, fixed) === -1)) return false;
  return openOf(net, labels, lag, fixed).length <= 1;
}

function openOf(net: Net, labels: Labels, lag: NetLag, fixed: Fixed): NetCondition[] {
  return lag.when.filter((c) => stateOf(net, labels, c, fixed) === 0);
}

/** 1: `condition` holds; -1: it does not; 0: that is open. */
function stateOf(net: Net, labels: Labels, condition: NetCondition, fixed: Fixed): -1 | 0 | 1 {
  const modes = fixed.find((list) => at(list, 0).activity === condition.activity);
  if (modes === undefined) return labels.conditionHolds(condition);
  const first = int(net.modeFirst, condition.activity);
  const allowed = modes.filter((mode) => byte(condition.allowed, mode.index - first) === 1).length;
  return allowed === modes.length ? 1 : allowed === 0 ? -1 : 0;
}

/** Until when what `mode` holds keeps `next` waiting in any of `nextModes`: what is wet cannot be moved. */
function heldFor(mode: NetMode, next: number, nextModes: readonly NetMode[]): MapMemo[] {
  return mode.uses.flatMap((use) => {
    if (use.kind !== holdKinds.mapOrNext || use.next !== next || use.map === undefined) return [];
    return nextModes.some((other) => other.usesResource.has(use.resource)) ? [] : [use.map];
  });
}

/** The open modes of `i`. */
export function openModes(net: Net, labels: Labels, i: number): NetMode[] {
  const modes: NetMode[] = [];
  for (let m = int(net.modeFirst, i); m < int(net.modeFirst, i + 1); m++)
    if (labels.isOpen(m)) modes.push(at(net.modes, m));
  return modes;
}

function slotsOf(modes: readonly NetMode[]): Slots[] {
  return [...new Set(modes.map((mode) => mode.slots))];
}

function isAlike(one: Way, other: Way): boolean {
  return (
    one.slots === other.slots &&
    isSame(one.direct, other.direct) &&
    isSame(one.into, other.into) &&
    isSame(one.onward, other.onward)
  );
}

function isSame(one: Bonds, other: Bonds): boolean {
  const same = (a: readonly unknown[], b: readonly unknown[]) => a.length === b.length && a.every((x, k) => x === b[k]);
  return same(one.lags, other.lags) && same(one.holds, other.holds);
}

/**
 * The earliest that `wait` lets the waiting one start when the other starts and ends somewhere in `starts` and `ends`;
 * NEVER if it cannot.
 */
export function floorOf(wait: Wait, starts: Stretch, ends: Stretch): Minute {
  let floor = within(wait.slots, wait.always, ALWAYS, starts, ends);
  for (const ways of wait.either) {
    let weakest: Minute = NEVER;
    for (const way of ways) weakest = Math.min(weakest, floorThrough(wait, way, floor, starts, ends));
    floor = weakest;
  }
  return wait.beyond === undefined ? floor : within(wait.beyond.slots, wait.beyond.bonds, floor, starts, ends);
}

function floorThrough(wait: Wait, way: Way, floor: Minute, starts: Stretch, ends: Stretch): Minute {
  const { slots, direct, into, onward } = way;
  const begun = within([slots], into, ALWAYS, starts, ends);
  if (begun === NEVER) return NEVER;
  const straight = within(wait.slots, direct, floor, starts, ends);
  if (straight === NEVER || onward.lags.length === 0) return straight;
  const between = { first: begun, last: slots.last };
  const done = { first: slots.end(begun), last: slots.end(slots.last) };
  const through = within(wait.slots, onward, straight, between, done);
  // What lies between may hold it up until a window has shut that was open before.
  return through === straight ? straight : within(wait.slots, direct, through, starts, ends);
}

/** First start from `floor` in one of `slots` that `bonds` let follow; NEVER if there is none. */
function within(slots: readonly Slots[], bonds: Bonds, floor: Minute, starts: Stretch, ends: Stretch): Minute {
  let first = floor;
  let last: Minute = NEVER - 1;
  for (const { fromEnd, least, most } of bonds.lags) {
    const { first: soonest, last: latest } = fromEnd ? ends : starts;
    if (least !== undefined) first = Math.max(first, least.at(soonest));
    if (most !== undefined && bonds.shut) last = Math.min(last, most.at(latest));
  }
  for (const map of bonds.holds) first = Math.max(first, map.at(ends.first));
  const start = firstFit(slots, first);
  return start <= last ? start : NEVER;
}

/** First start from `floor` in any of `slots`; NEVER if there is none. */
export function firstFit(slots: readonly Slots[], floor: Minute): Minute {
  let start: Minute = NEVER;
  for (const own of slots) start = Math.min(start, own.fit(floor));
  return start;
}

/**
 * The latest that `wait` lets the waiting one start when the other starts and ends somewhere in `starts` and `ends`: until the
 * windows shut; NEVER if none does. Where the waiting one may as well start together with what comes after, this is for both.
 */
export function ceilingOf(wait: Wait, starts: Stretch, ends: Stretch): Minute {
  let ceiling = shutOf(wait.always, starts, ends);
  for (const ways of wait.either) {
    const weakest = ways.reduce((most, { direct }) => Math.max(most, shutOf(direct, starts, ends)), ALWAYS);
    ceiling = Math.min(ceiling, weakest);
  }
  return wait.beyond === undefined ? ceiling : Math.min(ceiling, shutOf(wait.beyond.bonds, starts, ends));
}

function shutOf(bonds: Bonds, starts: Stretch, ends: Stretch): Minute {
  if (!bonds.shut) return NEVER;
  return bonds.lags.reduce(
    (last, { fromEnd, most }) => (most === undefined ? last : Math.min(last, most.at((fromEnd ? ends : starts).last))),
    NEVER,
  );
}

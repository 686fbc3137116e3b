import { at } from '../../at.ts';
import type { Minute } from '../../time/span.ts';
import { ALWAYS, NEVER } from '../../time/time-map.ts';
import type { Labels } from '../labels.ts';
import type { MapMemo } from '../map-memo.ts';
import { holdKinds, type Net, type NetLag, type NetMode } from '../net.ts';
import { byte, int } from '../../typed.ts';

/**
 * The waits of one activity for another, by the waiting one's mode, that hold whatever other modes are chosen. Where
 * they hang on the mode of a further activity, or lead through it, the weakest of its modes counts; a mode whose window
 * shuts before the other can start does not.
 */
export interface Wait {
  readonly parent: number;
  /** Open modes of the parent, one for each kind of slots. */
  readonly parentModes: readonly NetMode[];
  /** By place of the child's mode. */
  readonly byMode: readonly ModeWait[];
}

interface ModeWait {
  readonly always: Bonds;
  /** By further activity: the ways through its open modes. */
  readonly either: readonly (readonly Way[])[];
}

/** Least and most that join two activities in given modes. */
interface Bonds {
  readonly lags: readonly NetLag[];
  /** Until when what the earlier holds keeps the later from starting, by the earlier's end. */
  readonly holds: readonly MapMemo[];
}

/** What holds if a further activity has `mode`: directly, and by way of it. */
interface Way {
  readonly mode: NetMode;
  readonly direct: Bonds;
  readonly into: Bonds;
  readonly onward: Bonds;
}

/** Where a start or an end may lie. */
export interface Stretch {
  readonly first: Minute;
  readonly last: Minute;
}

/** The waits of `child` for `parent`, if there are any. */
export function waitBetween(net: Net, labels: Labels, child: number, parent: number): Wait | undefined {
  if (child === parent) return undefined;
  const lags = at(net.touching, child).filter((lag) => isBetween(lag, child, parent));
  const lagged = lags.some((lag) => lag.least !== undefined);
  const parentModes = openModes(net, labels, parent);
  const holding = openModes(net, labels, child).some((mode) => heldFor(mode, parent, parentModes).length > 0);
  if (!lagged && !holding) return undefined;
  const byMode = Array.from({ length: int(net.modeFirst, child + 1) - int(net.modeFirst, child) }, (_, k) => {
    const mode = at(net.modes, int(net.modeFirst, child) + k);
    return modeWait(net, labels, mode, k, parent, lags, parentModes);
  });
  return { parent, parentModes: oneOfEachSlots(parentModes), byMode };
}

function isBetween(lag: NetLag, from: number, to: number): boolean {
  return lag.from === from && lag.to === to && !lag.toEnd;
}

function modeWait(
  net: Net,
  labels: Labels,
  mode: NetMode,
  k: number,
  parent: number,
  lags: readonly NetLag[],
  parentModes: readonly NetMode[],
): ModeWait {
  const child = mode.activity;
  const own = lags.filter((lag) => lag.when.every((c) => c.activity !== child || byte(c.allowed, k) === 1));
  const openOf = (lag: NetLag) => lag.when.filter((c) => c.activity !== child && labels.conditionHolds(c) < 1);
  const certain = own.filter((lag) => openOf(lag).length === 0);
  const conditional = own.filter((lag) => openOf(lag).length === 1);
  const further = new Set(conditional.flatMap((lag) => openOf(lag).map((c) => c.activity)));
  for (const lag of at(net.touching, child))
    if (lag.from === child && lag.to !== parent && at(net.touching, lag.to).some((l) => isBetween(l, lag.to, parent)))
      further.add(lag.to);
  further.delete(child);
  return {
    always: { lags: certain, holds: heldFor(mode, parent, parentModes) },
    either: [...further].map((p) => waysThrough(net, labels, mode, k, p, parent, conditional)),
  };
}

/** By open mode of `p`, and one for each kind: what holds in it. */
function waysThrough(
  net: Net,
  labels: Labels,
  mode: NetMode,
  k: number,
  p: number,
  parent: number,
  conditional: readonly NetLag[],
): Way[] {
  const child = mode.activity;
  /** Do all conditions hold, whatever other modes are chosen, if `p` has the mode at place `local`? */
  const holds = (lag: NetLag, local: number): boolean =>
    lag.when.every((c) =>
      c.activity === p
        ? byte(c.allowed, local) === 1
        : c.activity === child
          ? byte(c.allowed, k) === 1
          : labels.conditionHolds(c) === 1,
    );
  const ways: Way[] = [];
  for (const through of openModes(net, labels, p)) {
    const local = through.index - int(net.modeFirst, p);
    const valid = (lag: NetLag) => holds(lag, local);
    const way: Way = {
      mode: through,
      direct: { lags: conditional.filter(valid), holds: [] },
      into: {
        lags: at(net.touching, child).filter((lag) => isBetween(lag, child, p) && valid(lag)),
        holds: p === parent ? [] : heldFor(mode, p, [through]),
      },
      onward: { lags: at(net.touching, p).filter((lag) => isBetween(lag, p, parent) && valid(lag)), holds: [] },
    };
    if (!ways.some((known) => isAlike(known, way))) ways.push(way);
  }
  return ways;
}

function isAlike(one: Way, other: Way): boolean {
  const pairs = [
    [one.direct, other.direct],
    [one.into, other.into],
    [one.onward, other.onward],
  ] as const;
  return (
    one.mode.slots === other.mode.slots &&
    pairs.every(([a, b]) => isSame(a.lags, b.lags) && isSame(a.holds, b.holds))
  );
}

function isSame(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((entry, k) => entry === other[k]);
}

function openModes(net: Net, labels: Labels, i: number): NetMode[] {
  const first = int(net.modeFirst, i);
  const last = int(net.modeFirst, i + 1);
  return net.modes.slice(first, last).filter((mode) => labels.isOpen(mode.index));
}

function oneOfEachSlots(modes: readonly NetMode[]): NetMode[] {
  return [...new Map(modes.map((mode) => [mode.slots, mode])).values()];
}

/** Until when what `mode` holds keeps `next` waiting, whose open modes are `nextModes`: what is wet cannot be moved. */
function heldFor(mode: NetMode, next: number, nextModes: readonly NetMode[]): MapMemo[] {
  return mode.uses.flatMap((use) => {
    if (use.kind !== holdKinds.mapOrNext || use.next !== next || use.map === undefined) return [];
    return nextModes.some((other) => other.usesResource.has(use.resource)) ? [] : [use.map];
  });
}

/**
 * The earliest that `wait` lets its parent start when its child, in its mode number `k`, starts and ends somewhere in
 * `starts` and `ends`; NEVER if it cannot. `labels` say where the parent may start at all.
 */
export function floorOf(labels: Labels, wait: Wait, k: number, starts: Stretch, ends: Stretch): Minute {
  const { always, either } = at(wait.byMode, k);
  let floor = within(labels, wait.parentModes, always, ALWAYS, starts, ends);
  for (const ways of either) {
    let weakest: Minute = NEVER;
    for (const way of ways) weakest = Math.min(weakest, floorThrough(labels, wait, way, floor, starts, ends));
    floor = weakest;
  }
  return floor;
}

function floorThrough(
  labels: Labels,
  wait: Wait,
  { mode, direct, into, onward }: Way,
  floor: Minute,
  starts: Stretch,
  ends: Stretch,
): Minute {
  const begun = within(labels, [mode], into, ALWAYS, starts, ends);
  if (begun === NEVER) return NEVER;
  const straight = within(labels, wait.parentModes, direct, floor, starts, ends);
  if (straight === NEVER || onward.lags.length === 0) return straight;
  const last = labels.last(mode.index);
  const between = { first: begun, last: Math.max(begun, last) };
  const done = { first: mode.slots.end(begun), last: mode.slots.end(between.last) };
  return within(labels, wait.parentModes, onward, straight, between, done);
}

/** First start from `floor` in one of `modes` that `bonds` let follow; NEVER if there is none. */
function within(
  labels: Labels,
  modes: readonly NetMode[],
  bonds: Bonds,
  floor: Minute,
  starts: Stretch,
  ends: Stretch,
): Minute {
  let first = floor;
  let last: Minute = NEVER;
  for (const { fromEnd, least, most } of bonds.lags) {
    const { first: soonest, last: latest } = fromEnd ? ends : starts;
    if (least !== undefined) first = Math.max(first, least.at(soonest));
    if (most !== undefined) last = Math.min(last, most.at(latest));
  }
  for (const map of bonds.holds) first = Math.max(first, map.at(ends.first));
  let start: Minute = NEVER;
  for (const { index, slots } of modes) start = Math.min(start, slots.fit(Math.max(first, labels.first(index))));
  return start <= last ? start : NEVER;
}

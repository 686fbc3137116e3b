import { at } from '../../at.ts';
import type { Minute } from '../../time/span.ts';
import { ALWAYS, NEVER } from '../../time/time-map.ts';
import type { Labels } from '../labels.ts';
import { holdKinds, type Net, type NetLag, type NetMode } from '../net.ts';
import type { Structure } from '../structure.ts';
import type { Term } from '../problem.ts';
import { byte, int } from '../../typed.ts';
import { floorOf, isWaitedFor, openModes, type Wait, waitOf } from '../waits.ts';

/** An activity, what it waits with, and what waits for it. */
export interface Branch {
  /** The one later activity that waits for it, or -1. */
  readonly parent: number;
  /** Its open modes, those together that what it waits for need not tell apart. */
  readonly classes: readonly (readonly NetMode[])[];
  /** By class: may it as well start together with its parent? Then its own latest start does not count. */
  readonly floats: readonly boolean[];
  /** By class: does it float, and never start after its parent? Then the two may be taken to start together. */
  readonly joined: readonly boolean[];
}

/**
 * Every activity with the one later activity that waits for it the longest, or with the one before that. Waits for any
 * others are left out, so that what remains is a forest, which can be priced exactly.
 */
export function branchesOf(
  net: Net,
  labels: Labels,
  structure: Structure,
  terms: readonly (readonly Term[])[],
): Branch[] {
  const classes = Array.from({ length: net.count }, (_, i) => classesOf(net, labels, i));
  return classes.map((own, i): Branch => {
    const parent = parentOf(net, labels, structure, classes, i);
    const floats = own.map((modes) => parent >= 0 && at(terms, i).length === 0 && isFree(net, modes, parent));
    const ordered = at(net.touching, i).some((lag) => lag.from === i && lag.to === parent && isCertain(lag));
    return { parent, classes: own, floats, joined: floats.map((one) => one && ordered) };
  });
}

/** What keeps each class of its parent waiting for an activity in `mode`. */
export function waitsOf(net: Net, labels: Labels, branches: readonly Branch[], mode: NetMode): Wait[] {
  const { parent } = at(branches, mode.activity);
  if (parent < 0) return [];
  const above = at(branches, parent);
  return above.classes.map((modes, c) =>
    waitOf(net, labels, mode, modes, above.floats[c] === true ? above.parent : undefined),
  );
}

function parentOf(
  net: Net,
  labels: Labels,
  structure: Structure,
  classes: readonly (readonly (readonly NetMode[])[])[],
  i: number,
): number {
  const later = new Set(at(net.touching, i).map((lag) => lag.to));
  for (const mode of openModes(net, labels, i)) for (const use of mode.uses) if (use.next >= 0) later.add(use.next);
  let best = -1;
  let bestFloor: Minute = ALWAYS;
  for (const parent of [...later].sort((a, b) => int(structure.rank, a) - int(structure.rank, b))) {
    if (int(structure.rank, i) >= int(structure.rank, parent) || !isWaitedFor(net, labels, i, parent)) continue;
    const floor = weakestFloor(net, labels, i, at(classes, parent), labels.earliestStart(i), labels.earliestEnd(i));
    if (best >= 0) {
      // What comes between the two is the better parent, unless the way through it is the shorter.
      const follows = isWaitedFor(net, labels, best, parent);
      if (follows && reachThrough(net, labels, i, at(classes, best), at(classes, parent)) >= floor) continue;
      if (!follows && floor + tailOf(labels, parent) <= bestFloor + tailOf(labels, best)) continue;
    }
    best = parent;
    bestFloor = floor;
  }
  return best;
}

/** When a parent could start by way of an activity between, each as soon as it can after `i`. */
function reachThrough(
  net: Net,
  labels: Labels,
  i: number,
  betweenClasses: readonly (readonly NetMode[])[],
  parentClasses: readonly (readonly NetMode[])[],
): Minute {
  const parent = at(at(parentClasses, 0), 0).activity;
  let soonest: Minute = NEVER;
  for (const between of betweenClasses) {
    const after = isFree(net, between, parent) ? parent : undefined;
    let floor: Minute = NEVER;
    for (const mode of openModes(net, labels, i))
      floor = Math.min(
        floor,
        floorAt(waitOf(net, labels, mode, between, after), labels.earliestStart(i), labels.earliestEnd(i)),
      );
    for (const mode of between) {
      const start = mode.slots.fit(floor);
      if (start === NEVER) continue;
      const end = mode.slots.end(start);
      for (const modes of parentClasses)
        soonest = Math.min(soonest, floorAt(waitOf(net, labels, mode, modes), start, end));
    }
  }
  return soonest;
}

function weakestFloor(
  net: Net,
  labels: Labels,
  i: number,
  parentClasses: readonly (readonly NetMode[])[],
  start: Minute,
  end: Minute,
): Minute {
  let weakest: Minute = NEVER;
  for (const mode of openModes(net, labels, i))
    for (const modes of parentClasses)
      weakest = Math.min(weakest, floorAt(waitOf(net, labels, mode, modes), start, end));
  return weakest;
}

function floorAt(wait: Wait, start: Minute, end: Minute): Minute {
  return floorOf(wait, { first: start, last: start }, { first: end, last: end });
}

/** The longer the way from an activity to the end of all, the earlier its latest start. */
function tailOf(labels: Labels, i: number): number {
  return -labels.latestStart(i) / 1000;
}

/** The open modes of `i`, by what lags that end in it and what is held until it starts ask of them. */
function classesOf(net: Net, labels: Labels, i: number): NetMode[][] {
  const conditions = at(net.touching, i).flatMap((lag) => lag.when.filter((c) => c.activity === i));
  const held = at(net.heldUntil, i).filter((use) => use.kind === holdKinds.mapOrNext);
  const classes = new Map<string, NetMode[]>();
  for (const mode of openModes(net, labels, i)) {
    const local = mode.index - int(net.modeFirst, i);
    const name = [
      ...conditions.map((c) => byte(c.allowed, local)),
      ...held.map((use) => (mode.usesResource.has(use.resource) ? 1 : 0)),
      isIdle(mode) ? 1 : 0,
    ].join('');
    const known = classes.get(name);
    if (known === undefined) classes.set(name, [mode]);
    else known.push(mode);
  }
  return [...classes.values()];
}

function isIdle({ slots, uses, presences }: NetMode): boolean {
  return slots.duration === 0 && uses.length === 0 && presences.length === 0;
}

/** Could an activity in one of `modes`, wherever it is, as well start when `parent` does? */
function isFree(net: Net, modes: readonly NetMode[], parent: number): boolean {
  const { from, to } = net.problem;
  const i = at(modes, 0).activity;
  const anywhere = ({ slots }: NetMode) =>
    slots.fit(from) === from && slots.fitBack(to) === to && slots.domain.count === 1;
  const tied = at(net.touching, i).some(
    (lag) => lag.from === i && (lag.to !== parent || lag.toEnd || (lag.least?.shift ?? 0) !== 0 || isMapped(lag.least)),
  );
  return modes.every((mode) => isIdle(mode) && anywhere(mode)) && !tied;
}

/** Does `lag` keep its end, whatever is chosen, from starting before its beginning is over? */
function isCertain({ when, toEnd, least }: NetLag): boolean {
  return when.length === 0 && !toEnd && least?.shift === 0;
}

function isMapped(least: { readonly shift: number | undefined } | undefined): boolean {
  return least !== undefined && least.shift === undefined;
}

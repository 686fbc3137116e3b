import { at } from '../../at.ts';
import type { Minute } from '../../time/span.ts';
import { ALWAYS, NEVER } from '../../time/time-map.ts';
import type { Labels } from '../labels.ts';
import type { Net, NetLag } from '../net.ts';
import type { Structure } from '../structure.ts';
import { byte, int } from '../../typed.ts';

/**
 * The waits of one activity for another, by the waiting one's mode, that hold whatever other modes are chosen: of lags
 * under conditions on a further activity the weakest of its modes.
 */
export interface Wait {
  readonly parent: number;
  /** By place of the child's mode. */
  readonly byMode: readonly ModeWait[];
}

interface ModeWait {
  readonly always: readonly NetLag[];
  /** By further activity and by its open mode: the lags that hold. */
  readonly either: readonly (readonly (readonly NetLag[])[])[];
}

/**
 * Every activity with the one later activity that waits for it the longest. Waits for any others are left out, so that
 * what remains is a forest, which can be priced exactly.
 */
export function waitsOf(net: Net, labels: Labels, structure: Structure): (Wait | undefined)[] {
  return Array.from({ length: net.count }, (_, i) => {
    let best: Wait | undefined;
    let bestFloor = -Infinity;
    for (const parent of new Set(at(net.touching, i).map((lag) => lag.to))) {
      if (int(structure.rank, i) >= int(structure.rank, parent)) continue;
      const wait = waitBetween(net, labels, i, parent);
      if (wait === undefined) continue;
      const floor = weakestFloor(net, labels, wait, i) + tailOf(labels, parent);
      if (floor <= bestFloor) continue;
      best = wait;
      bestFloor = floor;
    }
    return best;
  });
}

function weakestFloor(net: Net, labels: Labels, wait: Wait, i: number): Minute {
  const first = int(net.modeFirst, i);
  let weakest: Minute = NEVER;
  for (let k = 0; k < wait.byMode.length; k++)
    if (labels.isOpen(first + k))
      weakest = Math.min(weakest, floorOf(wait, k, labels.earliestStart(i), labels.earliestEnd(i)));
  return weakest;
}

/** The longer the way from an activity to the end of all, the earlier its latest start. */
function tailOf(labels: Labels, i: number): number {
  return -labels.latestStart(i) / 1000;
}

/** The waits of `child` for `parent`, if there are any. */
export function waitBetween(net: Net, labels: Labels, child: number, parent: number): Wait | undefined {
  const lags = at(net.touching, child).filter(
    (lag) => lag.from === child && lag.to === parent && child !== parent && lag.least !== undefined && !lag.toEnd,
  );
  if (lags.length === 0) return undefined;
  const first = int(net.modeFirst, child);
  const byMode = Array.from({ length: int(net.modeFirst, child + 1) - first }, (_, k) =>
    modeWait(
      net,
      labels,
      lags.filter((lag) => lag.when.every((c) => c.activity !== child || byte(c.allowed, k) === 1)),
      child,
    ),
  );
  return { parent, byMode };
}

function modeWait(net: Net, labels: Labels, lags: readonly NetLag[], child: number): ModeWait {
  const open = (lag: NetLag) => lag.when.filter((c) => c.activity !== child && labels.conditionHolds(c) < 1);
  const conditional = lags.filter((lag) => open(lag).length === 1);
  const others = new Set(conditional.flatMap((lag) => open(lag).map((condition) => condition.activity)));
  return {
    always: lags.filter((lag) => open(lag).length === 0),
    either: [...others].map((p) =>
      alternatives(
        net,
        labels,
        conditional.filter((lag) => open(lag).some((c) => c.activity === p)),
        p,
      ),
    ),
  };
}

/** By open mode of `p`: those of `lags` that hold in it. */
function alternatives(net: Net, labels: Labels, lags: readonly NetLag[], p: number): NetLag[][] {
  const lists: NetLag[][] = [];
  for (let m = int(net.modeFirst, p); m < int(net.modeFirst, p + 1); m++) {
    if (!labels.isOpen(m)) continue;
    const local = m - int(net.modeFirst, p);
    lists.push(lags.filter((lag) => lag.when.some((c) => c.activity === p && byte(c.allowed, local) === 1)));
  }
  return lists;
}

/** The earliest that `wait` lets its parent start when its child, in its mode number `k`, runs from `start` to `end`. */
export function floorOf(wait: Wait, k: number, start: Minute, end: Minute): Minute {
  const { always, either } = at(wait.byMode, k);
  let floor = latestOf(always, start, end);
  for (const modes of either) {
    let weakest: Minute = NEVER;
    for (const lags of modes) weakest = Math.min(weakest, latestOf(lags, start, end));
    floor = Math.max(floor, weakest);
  }
  return floor;
}

function latestOf(lags: readonly NetLag[], start: Minute, end: Minute): Minute {
  let latest: Minute = ALWAYS;
  for (const lag of lags) latest = Math.max(latest, lag.least?.at(lag.fromEnd ? end : start) ?? ALWAYS);
  return latest;
}

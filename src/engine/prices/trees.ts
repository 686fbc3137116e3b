import { at } from '../../at.ts';
import type { Minute } from '../../time/span.ts';
import { ALWAYS, NEVER } from '../../time/time-map.ts';
import type { Labels } from '../labels.ts';
import type { Net, NetLag } from '../net.ts';
import type { Structure } from '../structure.ts';
import { byte, int } from '../typed.ts';

/**
 * The waits of one activity for another that hold whatever modes are chosen: of lags under conditions on one activity
 * the weakest of its modes.
 */
export interface Wait {
  readonly child: number;
  readonly parent: number;
  readonly always: readonly NetLag[];
  /** Alternatives, one for each mode of the activity that the conditions are on; each a list of lags. */
  readonly either: readonly (readonly (readonly NetLag[])[])[];
  /** Tells waits with the same lags apart from others. */
  readonly key: string;
}

/**
 * Every activity with the one later activity that waits for it the longest. Waits for any others are left out, so that
 * what remains is a forest, which can be priced exactly.
 */
export function waitsOf(net: Net, labels: Labels, structure: Structure): (Wait | undefined)[] {
  return Array.from({ length: net.count }, (_, i) => {
    const lags = at(net.touching, i).filter((lag) => lag.from === i && isForward(structure, lag));
    let best: Wait | undefined;
    let bestFloor = -Infinity;
    for (const parent of new Set(lags.map((lag) => lag.to))) {
      const wait = waitFor(
        net,
        labels,
        lags.filter((lag) => lag.to === parent),
      );
      const floor = floorOf(wait, labels.earliestStart(i), labels.earliestEnd(i)) + tailOf(labels, parent);
      if (floor <= bestFloor) continue;
      best = wait;
      bestFloor = floor;
    }
    return best;
  });
}

/** The longer the way from an activity to the end of all, the earlier its latest start. */
function tailOf(labels: Labels, i: number): number {
  return -labels.latestStart(i) / 1000;
}

function isForward(structure: Structure, lag: NetLag): boolean {
  return (
    lag.least !== undefined &&
    !lag.toEnd &&
    lag.from !== lag.to &&
    int(structure.rank, lag.from) < int(structure.rank, lag.to)
  );
}

/** Joins all lags from one activity to another; there is at least one. */
function waitFor(net: Net, labels: Labels, lags: readonly NetLag[]): Wait {
  const always = lags.filter((lag) => lag.when.every((condition) => labels.conditionHolds(condition) === 1));
  const conditional = lags.filter((lag) => lag.when.length === 1 && !always.includes(lag));
  const either = [...new Set(conditional.flatMap((lag) => lag.when.map((condition) => condition.activity)))].map((p) =>
    alternatives(net, labels, conditional, p),
  );
  const keyOf = (list: readonly NetLag[]): string => list.map((lag) => lag.index).join(',');
  return {
    child: at(lags, 0).from,
    parent: at(lags, 0).to,
    always,
    either,
    key: [keyOf(always), ...either.map((modes) => modes.map(keyOf).join('|'))].join(';'),
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

/** The earliest that `wait` lets its parent start when its child runs from `start` to `end`. */
export function floorOf(wait: Wait, start: Minute, end: Minute): Minute {
  let floor = latestOf(wait.always, start, end);
  for (const modes of wait.either) {
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

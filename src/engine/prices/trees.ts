import { at } from '../../at.ts';
import type { Minute } from '../../time/span.ts';
import { NEVER } from '../../time/time-map.ts';
import type { Labels } from '../labels.ts';
import type { Net } from '../net.ts';
import type { Structure } from '../structure.ts';
import { int } from '../../typed.ts';
import { floorOf, type Wait, waitBetween } from './waits.ts';

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
  const starts = { first: labels.earliestStart(i), last: labels.earliestStart(i) };
  const ends = { first: labels.earliestEnd(i), last: labels.earliestEnd(i) };
  let weakest: Minute = NEVER;
  for (let k = 0; k < wait.byMode.length; k++)
    if (labels.isOpen(first + k)) weakest = Math.min(weakest, floorOf(labels, wait, k, starts, ends));
  return weakest;
}

/** The longer the way from an activity to the end of all, the earlier its latest start. */
function tailOf(labels: Labels, i: number): number {
  return -labels.latestStart(i) / 1000;
}

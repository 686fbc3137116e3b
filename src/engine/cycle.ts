import { at } from '../at.ts';
import type { Net, NetLag } from './net.ts';
import { int } from '../typed.ts';

/** One lag that moved `target` later: forward by its `least`, else backward by its `most`. */
interface Push {
  readonly lag: NetLag;
  readonly target: number;
  readonly forward: boolean;
}

/**
 * Follows the lags in `reasons` back from activity `start`. If they close a cycle of plain shifts that gains time on
 * every round, no schedule exists: the cycle's lags are returned.
 */
export function positiveCycle(net: Net, reasons: Int32Array, start: number): readonly NetLag[] | undefined {
  const path: Push[] = [];
  const positions = new Map<number, number>();
  let i = start;
  for (;;) {
    const seen = positions.get(i);
    if (seen !== undefined) {
      const cycle = path.slice(seen);
      return gainOf(net, cycle) > 0 ? cycle.map((push) => push.lag) : undefined;
    }
    positions.set(i, path.length);
    const lag = net.lags[int(reasons, i)];
    if (lag === undefined || lag.from === lag.to) return undefined;
    const forward = lag.to === i;
    path.push({ lag, target: i, forward });
    i = forward ? lag.from : lag.to;
  }
}

/** Least time gained on one round of `cycle`; 0 where a map, a condition or a pause makes it uncertain. */
function gainOf(net: Net, cycle: readonly Push[]): number {
  let gain = 0;
  for (const [k, push] of cycle.entries()) {
    const { lag, target, forward } = push;
    const shift = (forward ? lag.least : lag.most)?.shift;
    if (shift === undefined || lag.when.length > 0) return 0;
    // The path runs back in time: the push before this one in it leaves from this one's target.
    const next = at(cycle, (k + cycle.length - 1) % cycle.length);
    const reachesEnd = forward ? lag.toEnd : lag.fromEnd;
    const leavesEnd = next.forward ? next.lag.fromEnd : next.lag.toEnd;
    const across = reachesEnd === leavesEnd ? 0 : leavesEnd ? shortestOf(net, target) : -runningTimeOf(net, target);
    gain += (forward ? shift : -shift) + across;
  }
  return gain;
}

function shortestOf(net: Net, i: number): number {
  let shortest = Infinity;
  for (let m = int(net.modeFirst, i); m < int(net.modeFirst, i + 1); m++)
    shortest = Math.min(shortest, at(net.modes, m).slots.duration);
  return shortest;
}

/** From start to end of an activity at most; without limit if it may pause. */
function runningTimeOf(net: Net, i: number): number {
  let longest = 0;
  for (let m = int(net.modeFirst, i); m < int(net.modeFirst, i + 1); m++) {
    const { duration, calendar } = at(net.modes, m).slots;
    longest = Math.max(longest, calendar === undefined ? duration : Infinity);
  }
  return longest;
}

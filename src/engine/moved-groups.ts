import { at } from '../at.ts';
import type { Minute } from '../time/span.ts';
import { presenceEnd } from './plan.ts';
import { homeOf, type Search } from './search.ts';
import { int } from './typed.ts';

/** How far a group may grow by what lies in the way of what it holds. */
const mostInWay = 12;

/** An activity that lies off its home (the `at` of its `moved` term), and by how much. */
export interface Off {
  readonly activity: number;
  readonly home: Minute;
  readonly by: number;
}

/** What lies off its home, the largest move first. */
export function offHome(search: Search): Off[] {
  return [...search.plan.starts]
    .flatMap((start, activity): Off[] => {
      const home = search.pinned[activity] === 1 ? undefined : homeOf(search, activity);
      return home === undefined || home === start ? [] : [{ activity, home, by: Math.abs(start - home) }];
    })
    .sort((a, b) => b.by - a.by || a.activity - b.activity);
}

/** Each with all that moved in its component and comes after it. */
export function chains({ structure: { componentOf, rank } }: Search, off: readonly Off[]): number[][] {
  return off.flatMap(({ activity: i }) => {
    const behind = off
      .map((o) => o.activity)
      .filter((j) => int(componentOf, j) === int(componentOf, i) && int(rank, j) >= int(rank, i));
    return behind.length > 1 ? [behind] : [];
  });
}

/** Each with what moved into its way, and what moved into the way of that, and so on. */
export function withObstacles(search: Search, off: readonly Off[]): number[][] {
  return off.flatMap((first) => {
    const group = [first];
    for (const { activity, home } of group) {
      const length = takenUntil(search, activity) - int(search.plan.starts, activity);
      for (const other of off) {
        if (group.length >= mostInWay || group.includes(other)) continue;
        const start = int(search.plan.starts, other.activity);
        if (start < home + length && home < takenUntil(search, other.activity)) group.push(other);
      }
    }
    return group.length > 1 ? [group.map((o) => o.activity)] : [];
  });
}

/** Each with all that begins in the `spare` minutes from its home on and may give way a little, and what moved behind it. */
export function withNeighbours(search: Search, off: readonly Off[], spare: number): number[][] {
  const { componentOf } = search.structure;
  const homes = [...search.plan.starts.keys()].map((i) => (search.pinned[i] === 1 ? undefined : homeOf(search, i)));
  return off
    .filter(({ by }) => by > spare / 2)
    .map(({ activity, home }) => {
      const moved = off.filter((o) => int(componentOf, o.activity) === int(componentOf, activity) && o.home >= home);
      const near = homes.flatMap((h, i) => (h !== undefined && h >= home && h < home + spare ? [i] : []));
      return [...new Set([...moved.map((o) => o.activity), ...near])];
    });
}

/** Each alone, in the order in which they were at home, so that one makes room for the next. */
export function alone(off: readonly Off[]): number[][] {
  return off.toSorted((a, b) => a.home - b.home || a.activity - b.activity).map((o) => [o.activity]);
}

/** Until when a placed activity takes up anything. */
function takenUntil({ net, plan }: Search, i: number): Minute {
  const { uses, presences } = at(net.modes, int(plan.modes, i));
  const end = int(plan.ends, i);
  return Math.max(
    end,
    ...uses.map((use) => int(plan.until, use.index)),
    ...presences.map((presence) => presenceEnd(presence, end)),
  );
}

/** Of each whole what moved, where that is more than one. */
export function movedOf(wholes: readonly (readonly number[])[], off: readonly Off[]): number[][] {
  const moved = new Set(off.map((o) => o.activity));
  return wholes.map((whole) => whole.filter((i) => moved.has(i))).filter((list) => list.length > 1);
}

import { at } from '../../at.ts';
import type { Minute } from '../../time/span.ts';
import { int } from '../../typed.ts';
import type { Known } from './first-prices.ts';
import { type Forest, never, type Tree } from './forest.ts';
import { bucketOf, type Grid } from './grid.ts';

/** Starts of activities, in modes numbered through; those before a minute are taken as settled. */
export type Settled = Pick<Known, 'starts' | 'modes'>;

/**
 * Keeps what of `tree` starts before `until` where it is, and lets the rest start in bucket `from` at the earliest. What may as
 * well start together with what waits for it goes on doing so, in the mode that it has, while that is not settled.
 */
export function narrow(
  { opens, shuts, fixed, buckets }: Forest,
  { nodes }: Tree,
  grid: Grid,
  { starts, modes }: Settled,
  until: Minute,
  from: number,
): void {
  for (let k = nodes.length - 1; k >= 0; k--) {
    const { activity, parent, modes: priced } = at(nodes, k);
    const start = int(starts, activity);
    const isSettled = int(modes, activity) >= 0 && start < until;
    const isBound = parent < 0 || int(fixed, at(nodes, parent).activity) !== never;
    fixed[activity] = never;
    priced.forEach(({ place, mode, floats, firstBucket, lastBucket }, m) => {
      const isOut = isSettled && mode !== int(modes, activity);
      const bucket = isSettled && (isBound || !floats) ? bucketOf(grid, start) : undefined;
      opens[place] = isOut ? 0 : (bucket ?? Math.max(firstBucket, from));
      shuts[place] = isOut ? never : (bucket ?? lastBucket);
      if (!isOut && bucket !== undefined) fixed[activity] = m * buckets + bucket;
    });
  }
}

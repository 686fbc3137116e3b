import { get } from './ints.ts';
import type { Link } from './links.ts';

/**
 * Narrows start windows along unguarded arcs until nothing moves. False if a window closes. Arcs in the order of
 * their starts settle in few rounds.
 */
export function narrowWindows(lowest: Int32Array, highest: Int32Array, links: readonly Link[]): boolean {
  for (let moved = true; moved; ) {
    moved = false;
    for (const { from, to, weight } of links) {
      const least = get(lowest, from) + weight;
      if (least <= get(lowest, to)) continue;
      if (least > get(highest, to)) return false;
      lowest[to] = least;
      moved = true;
    }
    for (let k = links.length - 1; k >= 0; k--) {
      const link = links[k];
      if (link === undefined) continue;
      const most = get(highest, link.to) - link.weight;
      if (most >= get(highest, link.from)) continue;
      if (most < get(lowest, link.from)) return false;
      highest[link.from] = most;
      moved = true;
    }
  }
  return true;
}

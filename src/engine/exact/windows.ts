import { int } from '../../typed.ts';
import type { Link } from './links.ts';

/**
 * Narrows start windows along unguarded arcs until nothing moves. False if a window closes. Arcs in the order of
 * their starts settle in few rounds.
 */
export function narrowWindows(lowest: Int32Array, highest: Int32Array, links: readonly Link[]): boolean {
  for (let moved = true; moved;) {
    moved = false;
    for (const { from, to, weight } of links) {
      const least = int(lowest, from) + weight;
      if (least <= int(lowest, to)) continue;
      if (least > int(highest, to)) return false;
      lowest[to] = least;
      moved = true;
    }
    for (let k = links.length - 1; k >= 0; k--) {
      const link = links[k];
      if (link === undefined) continue;
      const most = int(highest, link.to) - link.weight;
      if (most >= int(highest, link.from)) continue;
      if (most < int(lowest, link.from)) return false;
      highest[link.from] = most;
      moved = true;
    }
  }
  return true;
}

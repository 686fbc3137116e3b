import type { Random } from './random.ts';
import { real } from '../typed.ts';

/** Most by which a component is drawn out or pressed together. */
const stretchBy = 0.5;

/** By which factor a component is drawn out or pressed together, where it is: in so large a share of cases. */
export function stretchOf(random: Random, share: number): number {
  return random.unit() < share ? 1 + stretchBy * (2 * random.unit() - 1) : 1;
}

/** Moves `members` in the order by so many minutes, drawn out by a factor from the first of them on. */
export function moveMembers(key: Float64Array, members: readonly number[], minutes: number, stretch: number): void {
  const begin = members.reduce((least, i) => Math.min(least, real(key, i)), Infinity);
  for (const i of members) key[i] = begin + (real(key, i) - begin) * stretch + minutes;
}

/** Shuffles `list` in the order: by up to so many hours, from one to `mostHours`, from the earliest to the latest. */
export function shuffle(key: Float64Array, list: readonly number[], mostHours: number, random: Random): void {
  const noise = 60 * (1 + random.below(mostHours));
  for (const i of list) key[i] = real(key, i) + noise * (random.unit() - 0.5);
}

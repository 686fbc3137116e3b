import { roundUp } from './round-up.ts';
import type { Learned } from './learned.ts';

/** Hand id -> how its work takes longer or shorter than the recipes say, as its own times have shown. */
export type Paces = ReadonlyMap<string, Learned>;

/** Minutes that work of `workMinutes` takes these hands: as long as the slowest of them needs, in steps of five minutes. */
export function pacedMinutes(workMinutes: number, hands: readonly string[], paces: Paces): number {
  const slowest = Math.max(...hands.map((hand) => paces.get(hand)?.factor ?? 1));
  return hands.length === 0 || slowest === 1 ? workMinutes : roundUp(workMinutes * slowest);
}

/** The least that it takes anybody. */
export function leastMinutes(workMinutes: number, paces: Paces): number {
  const quickest = Math.min(1, ...[...paces.values()].map((pace) => pace.factor));
  return quickest === 1 ? workMinutes : roundUp(workMinutes * quickest);
}

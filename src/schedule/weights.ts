import type { Piece } from '../model/piece.ts';

const MINOR_PER_MAJOR = 100;

/** What a piece costs the shop by standing there, a minute: room for all alike, and the money in it. */
export function tieUpWeight(piece: Piece): number {
  return 4 + Math.round(piece.costMinor / MINOR_PER_MAJOR / 25);
}

/** What a minute past its wanted-by date costs: far more than standing there, and by the value of the piece. */
export function lateWeight(piece: Piece): number {
  return 20 * (5 + Math.round(piece.priceMinor / MINOR_PER_MAJOR / 25));
}

/** What a minute costs by which a step is moved off the plan that the shop follows: least of all, but not nothing. */
export const MOVED_WEIGHT = 3;

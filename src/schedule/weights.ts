import type { Piece } from '../model/piece.ts';

const MINOR_PER_MAJOR = 100;

/** What a piece with no money in it costs the shop by standing there, a minute. */
export const PLAIN_WEIGHT = 4;

/** What a piece costs the shop by standing there, a minute: room for all alike, and the money in it. */
export function tieUpWeight(piece: Piece): number {
  return PLAIN_WEIGHT + Math.round(piece.costMinor / MINOR_PER_MAJOR / 25);
}

/** What a minute past its wanted-by date costs: far more than standing there, and by the value of the piece. */
export function lateWeight(piece: Piece): number {
  return 20 * (5 + Math.round(piece.priceMinor / MINOR_PER_MAJOR / 25));
}

/** What a minute of work costs that another plan would not need: an abrading for a late window, a gun washed once more. */
export const WORK_WEIGHT = 60;

/** What a minute costs that oily rags lie about after a coat that is done: before all dates. */
export const RAGS_WEIGHT = 10_000;

/**
 * What a plan pays for each step that it moves off the plan that the shop follows: as much as a piece pays for standing
 * there a working day. So a step moves where it cannot stay, or where that saves a date, never for a little time.
 */
export const MOVED_ONCE = 5000;
/** What it pays for each minute by which such a step moves. */
export const MOVED_WEIGHT = 10;

/** By how much dates come before moves: where there is a plan that people follow, a minute late counts as so many. */
export const LATE_BEFORE_MOVED = 10;

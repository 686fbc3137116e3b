/**
 * Drying milestones of a film, after the terms of ASTM D1640 and ISO 9117:
 * - `dust-free`: fibres dropped on it blow off (ISO 9117-3 surface-dry)
 * - `touch`: does not rub up under a light finger
 * - `tape`: takes low-tack tape without harm
 * - `sand`: powders, does not load the paper
 * - `recoat`: takes the next coat; as a window it may shut again
 * - `handle`: hard thumb press leaves no mark (dry-through): safe to move
 * - `stack`: does not stick to another surface under load: wrap, stack, close drawers
 * - `cure`: in full service
 */
export const marks = ['dust-free', 'touch', 'tape', 'sand', 'recoat', 'handle', 'stack', 'cure'] as const;
export type Mark = (typeof marks)[number];

/** Which end of a spread is meant: all goes fast, as usual, or slowly. */
export type Pace = 'early' | 'typical' | 'late';

/** Low, typical and high value of one figure; `low <= typical <= high`. */
export interface Spread {
  readonly low: number;
  readonly typical: number;
  readonly high: number;
}

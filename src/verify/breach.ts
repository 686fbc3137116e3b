import type { Minute } from '../time/span.ts';

/**
 * What no plan may break.
 * - `complete`: every task once, nothing unknown, spans that make sense
 * - `order`: after what comes before it, and not before now, its piece's arrival or the day it was put off to
 * - `wait`: not before a film's dry mark, at the slow end of its spread
 * - `window`: inside an open window of the coat beneath, with that window's preparation done
 * - `within`: over by the latest hour, such as a tape's
 * - `means`: the right kind of station, the hands, skill and tools that the way asks for
 * - `capacity`: one hand, tool and slot at one time; a piece keeps its slot until it is safe to move
 * - `hours`: hands-on work while the shop is open and the hand is in, as long as it takes
 * - `air`: inside the material's limits from application until dust-free
 * - `dust`: no dust where anything is wet
 * - `pot-life`: what was mixed is used up in time
 * - `session`: coats share mixing and wash-up only one after another: one material, tool, place and team, nothing between
 * - `journal`: what was done stays as it was
 * - `gate`: nothing that disturbs old paint before the lead test
 * - `rags`: oily rags are put away as each coat that leaves them ends, by the same hands
 * - `stay`: where it can be: not away, and in a room that can be had
 * - `shown`: the times that the plan shows are those that hold
 */
export const rules = [
  'complete',
  'order',
  'wait',
  'window',
  'within',
  'means',
  'capacity',
  'hours',
  'air',
  'dust',
  'pot-life',
  'session',
  'journal',
  'gate',
  'rags',
  'stay',
  'shown',
] as const;
export type RuleName = (typeof rules)[number];

/** One place where a plan breaks a rule. */
export interface Breach {
  readonly rule: RuleName;
  /** Task ids, the one that breaks the rule first; empty where the whole plan does. */
  readonly steps: readonly string[];
  readonly at: Minute;
  /** In the user's words, with the numbers. */
  readonly text: string;
}

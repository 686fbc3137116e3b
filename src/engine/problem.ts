import type { Minute, Spans } from '../time/span.ts';
import type { TimeMap } from '../time/time-map.ts';

/**
 * A scheduling problem as plain data: activities with alternative modes, generalised lags, renewable resources,
 * exclusions and a weighted objective. Times are whole minutes (or whole periods, in published instances). Everything
 * is referred to by its index. Nothing here knows of paint.
 */
export interface Problem {
  /** No activity starts before `from` (unless its mode's `starts` says so) or ends after `to`. */
  readonly from: Minute;
  readonly to: Minute;
  readonly resources: readonly Resource[];
  /** How many exclusions there are; `Presence.exclusion` indexes them. */
  readonly exclusions: number;
  readonly activities: readonly Activity[];
  readonly lags: readonly Lag[];
  readonly objective: readonly Term[];
}

/** Renewable: `capacity` units at every minute. Closed hours belong to the modes that need the resource. */
export interface Resource {
  readonly name: string;
  readonly capacity: number;
}

/** Exactly one of `modes` is chosen. An optional activity has a mode of no duration that uses nothing. */
export interface Activity {
  readonly name: string;
  readonly modes: readonly Mode[];
}

export interface Mode {
  readonly name: string;
  /** Minutes of work, a whole number >= 0. */
  readonly duration: number;
  /** Where the start may lie; absent: anywhere in the horizon. */
  readonly starts?: Spans;
  /**
   * Absent: the activity runs through, `end = start + duration`.
   * Present: work goes on only in these spans and pauses between them; `starts` lies within them, and `end` is the
   * first minute by which `duration` minutes of them have passed since the start.
   */
  readonly calendar?: Spans;
  readonly uses: readonly Use[];
  readonly presences?: readonly Presence[];
  /** Added to the objective when this mode is chosen (a whole number). */
  readonly cost?: number;
}

/** `units` of `resource` from the activity's start to its end, or on to where `hold` says. */
export interface Use {
  readonly resource: number;
  readonly units: number;
  readonly hold?: Hold;
}

/**
 * How long past its end an activity keeps a resource.
 * - `map`: until `map.at(end)`, at least the end.
 * - `next`: until the start of activity `next`, which takes over.
 * - `mapOrNext`: until `map.at(end)` or the start of `next`, whichever comes first; and if `next` starts before
 *   `map.at(end)`, the mode of `next` must use this same resource (what is wet cannot be moved).
 */
export type Hold =
  | { readonly kind: 'map'; readonly map: TimeMap }
  | { readonly kind: 'next'; readonly next: number }
  | { readonly kind: 'mapOrNext'; readonly map: TimeMap; readonly next: number };

/**
 * An exclusion has two sides. Presences of one side may overlap one another, never a presence of the other side. A
 * presence lasts from the activity's start to its end, or to `until.at(end)`. (Wet film here, dust there.)
 */
export interface Presence {
  readonly exclusion: number;
  readonly side: 0 | 1;
  readonly until?: TimeMap;
}

export type Point = 'start' | 'end';

/**
 * With `a` the `fromPoint` of `from` and `b` the `toPoint` of `to`: `least.at(a) <= b` and `b <= most.at(a)`.
 * A plain number stands for `a + number` (it may be negative). The lag holds only if every condition in `when` does.
 * `least` and `most` must be non-decreasing.
 */
export interface Lag {
  readonly from: number;
  readonly fromPoint: Point;
  readonly to: number;
  readonly toPoint: Point;
  readonly least?: TimeMap | number;
  readonly most?: TimeMap | number;
  readonly when?: readonly Condition[];
}

/** `activity` has one of `modes`. */
export interface Condition {
  readonly activity: number;
  readonly modes: readonly number[];
}

/**
 * One term of the objective, a whole number to minimise; the objective is the sum of all terms and mode costs.
 * - `late`: weight × max(0, end of activity - due)
 * - `end`: weight × (end of activity - from)
 * - `moved`: weight × |start of activity - at|, and `once` on top where the two differ
 */
export type Term = { readonly name: string; readonly activity: number; readonly weight: number } & (
  | { readonly kind: 'late'; readonly due: Minute }
  | { readonly kind: 'end' }
  | { readonly kind: 'moved'; readonly at: Minute; readonly once?: number }
);

/** A place for every activity: `starts[i]`, `ends[i]` and the index `modes[i]` of its chosen mode. */
export interface Schedule {
  readonly starts: readonly Minute[];
  readonly ends: readonly Minute[];
  readonly modes: readonly number[];
}

/**
 * What the search found.
 * - `optimal`: `schedule` is proven best, `bound === value`.
 * - `feasible`: `schedule` is valid; no schedule is cheaper than `bound`.
 * - `infeasible`: proven that there is none; `conflict` holds a reason where one was found.
 * - `unknown`: no schedule found, none excluded.
 */
export type Outcome =
  | {
      readonly status: 'optimal' | 'feasible';
      readonly schedule: Schedule;
      readonly value: number;
      readonly bound: number;
      /** Value and proven bound of each objective term, by index. */
      readonly terms: readonly { readonly value: number; readonly bound: number }[];
      /** What the chosen modes cost together, and the least that they can. */
      readonly modes: { readonly value: number; readonly bound: number };
      readonly steps: number;
    }
  | { readonly status: 'infeasible'; readonly conflict: Conflict; readonly steps: number }
  | { readonly status: 'unknown'; readonly stuck: Conflict; readonly steps: number };

/** Activities, lags (indices into `problem.lags`) and resources that cannot be satisfied together. */
export interface Conflict {
  readonly activities: readonly number[];
  readonly lags: readonly number[];
  readonly resources: readonly number[];
}

export interface SearchOptions {
  /** Seed of the search's own random numbers: same problem, seed and step budget, same answer to the byte. */
  readonly seed: number;
  /** Activities that are to come early: near a plan that is followed, their components are placed before all that stays. */
  readonly urgent?: readonly number[];
  /** Budget in steps of search (placements tried), not seconds. */
  readonly steps: number;
  /** True: with the budget used up, the search goes on until `stop` says so, or until its answer is proven best. */
  readonly goOn?: boolean;
  /** Asked now and then; true ends the search early with the best found. The core has no clock of its own. */
  readonly stop?: () => boolean;
  /**
   * The same problem with less asked of it: more modes open, fewer lags, none of its schedules dearer in it. `bound` is then
   * proven for it instead, and with it for all problems in between.
   */
  readonly loosened?: Problem;
  /**
   * A schedule to begin from and to stay near. It need not be valid for this problem. Where all that a `moved` term keeps
   * in its place can stay there, and nothing else takes up a resource, it stays: nothing better is looked for.
   */
  readonly from?: Schedule;
  /** Told whenever a better schedule is found. */
  readonly onBetter?: (value: number, bound: number, steps: number) => void;
}

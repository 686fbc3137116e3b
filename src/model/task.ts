import type { Mark, Spread } from './mark.ts';
import type { Film, Preparation } from './material.ts';
import type { Stage } from './recipe.ts';
import type { SessionPart } from './session-part.ts';
import type { StationKind } from './shop.ts';

/** One manner of doing a task, with its minutes worked out for the section. */
export interface Way {
  readonly name: string;
  /** With mixing, set-up and wash-up. */
  readonly workMinutes: number;
  /** Minutes where mixing, set-up and wash-up are shared with coats before or after it; absent where nothing is. */
  readonly inSession?: Readonly<Record<SessionPart, number>>;
  readonly stations: readonly StationKind[];
  readonly tools: readonly string[];
  readonly skill?: string;
  /** Share of the material that lands on the work, 0 to 1; absent: all of it. */
  readonly transfer?: number;
  readonly film?: Film;
}

/** Hours at reference air in which the coat may go on, and the task that must then come before it. */
export interface WindowChoice {
  readonly opens: Spread;
  readonly shuts?: Spread;
  readonly prep?: Preparation;
  /** Id of the optional task that does the preparation; absent where a step of the recipe does it already. */
  readonly prepTask?: string;
  /** No window of the sheet: what the trade does once all of those are missed. */
  readonly remedy?: true;
}

/**
 * What a task waits for. `task` is the other task's id.
 * - `order`: starts no earlier than the other's end, plus `waitHours`.
 * - `mark`: starts no earlier than the other's film has reached `mark`, at the slow end of its spread.
 * - `window`: starts inside one of `windows` of the other's film, with that window's preparation done.
 * - `within`: ends no later than `hours` after the other's end.
 */
export type Need =
  | { readonly kind: 'order'; readonly task: string; readonly waitHours: number }
  | { readonly kind: 'mark'; readonly task: string; readonly mark: Mark }
  | { readonly kind: 'window'; readonly task: string; readonly windows: readonly WindowChoice[] }
  | { readonly kind: 'within'; readonly task: string; readonly hours: number; readonly why: string };

/** A step of a recipe, laid onto one section of one piece: what the plan places. */
export interface Task {
  /** `PIECE/SECTION/STEP`; the section of joining steps of the whole piece is `whole`. */
  readonly id: string;
  readonly piece: string;
  readonly section: string;
  readonly step: string;
  readonly title: string;
  readonly stage: Stage;
  /** 1 for the first of several coats. */
  readonly coat?: number;
  readonly ways: readonly Way[];
  readonly people: number;
  readonly dusty: boolean;
  readonly mayPause: boolean;
  readonly needs: readonly Need[];
  /** Present for a preparation that is done only if the coat goes into a window that asks for it. */
  readonly onlyFor?: string;
  /** Follows that task to the minute, by the same hands beside the same work; it lies on no station and needs no work there. */
  readonly atOnceAfter?: string;
  /** Works on whatever old paint there is. */
  readonly disturbsOldPaint?: true;
  /** Not before the lead test of its piece. */
  readonly gated: boolean;
  /** Of the wood, for how its surface follows the air; absent: it is taken to be as warm as the air. */
  readonly thicknessMm?: number;
  readonly grit?: number;
  /** Id of the material that is laid down or on, also one that lays no film, like a tape. */
  readonly material?: string;
  readonly supplies: readonly string[];
  readonly caution?: string;
  /** The section is part of this object and shares its place: sections of one object are never worked on at once. */
  readonly object: string;
}

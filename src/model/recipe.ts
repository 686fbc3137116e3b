import type { Mark } from './mark.ts';
import type { Provenance } from './material.ts';
import type { StationKind } from './shop.ts';

export const stages = [
  'clean',
  'repair',
  'fill',
  'sand',
  'prime',
  'coat',
  'topcoat',
  'dismantle',
  'mask',
  'unmask',
  'refit',
  'inspect',
] as const;
export type Stage = (typeof stages)[number];

/** Minutes of hands-on work: `mix + fixed + perM2 × area + perItem × items`. */
export interface WorkTime {
  readonly fixedMinutes: number;
  readonly minutesPerM2: number;
  readonly minutesPerItem: number;
  /** Mixing, thinning and straining: once for all coats of a session. */
  readonly mixMinutes?: number;
}

/** One manner of doing a step; where there are several, the search chooses. */
export interface RecipeWay {
  /** Empty where there is only one. */
  readonly name: string;
  readonly time: WorkTime;
  readonly stations: readonly StationKind[];
  readonly tools: readonly string[];
  readonly skill?: string;
  /** Wet film relative to the sheet's. */
  readonly thickness: number;
  /** Share of what leaves the gun or brush that lands on the work, 0 to 1. */
  readonly transferEfficiency: number;
}

/** "After that step, at its mark, by this time": a reference from one step to another. */
export interface StepLink {
  /** `STEP` of the same section, or `SECTION/STEP`. */
  readonly step: string;
  readonly mark?: Mark;
  readonly waitHours?: number;
  readonly atMostHours?: number;
}

export interface RecipeStep {
  readonly id: string;
  /** What to do, in the words of the bench. */
  readonly title: string;
  readonly stage: Stage;
  readonly ways: readonly RecipeWay[];
  readonly material?: string;
  readonly depthMm?: number;
  /** Fillers, tapes, tack cloths and the like that are used up: `abrasive-180`, `tack-cloth`. */
  readonly grit?: number;
  readonly supplies: readonly string[];
  readonly people: number;
  readonly dusty: boolean;
  readonly mayPause: boolean;
  /** How often the step is repeated as coats; 1 is once. */
  readonly coats: number;
  /** Steps between one coat and the next. */
  readonly between: readonly RecipeStep[];
  /** The mark that films already on the section must have reached. */
  readonly needs?: Mark;
  /** Replaces the default, "after the step before". */
  readonly after?: readonly StepLink[];
  /** Steps of other sections that must wait for this one. */
  readonly before?: readonly StepLink[];
  /** A step (`mask`) whose tape this step takes off, inside the tape's own limit. */
  readonly unmasks?: string;
  /** For the recipe of the whole piece: before all sections begin, or after all have ended. */
  readonly joins?: 'begin' | 'end';
  /** Disturbs old paint: not before the lead test of a piece that may carry it. */
  readonly disturbsOldPaint: boolean;
  readonly caution?: string;
  readonly source: Provenance;
}

export interface Recipe {
  readonly id: string;
  readonly name: string;
  readonly about: string;
  readonly steps: readonly RecipeStep[];
}

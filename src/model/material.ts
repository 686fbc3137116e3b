import type { Mark, Spread } from './mark.ts';
import type { Quantity } from './quantity.ts';

/** How a material gets dry; each has one rate law in src/drying. */
export const mechanisms = [
  'solvent',
  'water',
  'oxidation',
  'two-part',
  'moisture-cure',
  'pva-glue',
  'hide-glue',
  'wood-water',
  'none',
] as const;
export type Mechanism = (typeof mechanisms)[number];

/** What a film is made of, as far as the next film cares. */
export const families = [
  'shellac',
  'water-borne',
  'alkyd',
  'oil',
  'lacquer',
  'wax',
  'two-part',
  'glue',
  'filler',
  'stain-oil',
  'stain-water',
  'chalk-paint',
  'cleaner',
  'tape',
] as const;
export type Family = (typeof families)[number];

/** Work that must come between a film and a late coat over it. */
export const preparations = ['scuff', 'abrade', 'wash-and-scuff', 'tack-coat', 'strip'] as const;
export type Preparation = (typeof preparations)[number];

/** Where a figure comes from: a named publication, or one of the two honest admissions. */
export type Provenance = string;

/** Hours at the reference air, with their provenance. */
export interface SheetHours extends Spread {
  readonly source: Provenance;
}

/**
 * A span after a coat in which the next coat may go on. Hours at reference air from the end of application.
 * Opening uses the slow end (`high`), shutting the fast end (`low`).
 */
export interface RecoatWindow {
  readonly opens: SheetHours;
  /** Absent: never shuts. */
  readonly shuts?: SheetHours;
  /** Absent: no preparation needed. */
  readonly prep?: Preparation;
  /** Only for a next coat of these families; absent: for all that no other window names. */
  readonly under?: readonly Family[];
}

/** May be applied only within these, from the start of application until dust-free. */
export interface Limits {
  readonly minTempC: number;
  readonly maxTempC: number;
  readonly minRhPercent: number;
  readonly maxRhPercent: number;
  /** Surface at least this far above the dew point (3 K: ISO 8502-4). */
  readonly dewMarginK: number;
  /** The air never colder than this for so many hours after application, whatever else is dry by then. */
  readonly keepAbove?: { readonly tempC: number; readonly hours: number };
  readonly source: Provenance;
}

/** How this material meets a film of another family beneath it. */
export interface StackRule {
  readonly over: Family;
  /** `no`: refused; `after`: only once the film beneath has reached `mark`. */
  readonly verdict: 'no' | 'after';
  readonly mark?: Mark;
  /** Material id of a coat that may go between and makes it possible. */
  readonly barrier?: string;
  readonly why: string;
}

export interface Material {
  /** File name without ending, e.g. `water-borne-acrylic-enamel`. */
  readonly id: string;
  readonly name: string;
  readonly family: Family;
  readonly mechanism: Mechanism;
  readonly reference: { readonly tempC: number; readonly rhPercent: number };
  /** Hours to each mark at the reference air and the sheet's film. A mark that is absent does not apply. */
  readonly marks: Partial<Readonly<Record<Mark, SheetHours>>>;
  /** Sorted by opening; empty: nothing goes over it by a window (marks still rule). */
  readonly windows: readonly RecoatWindow[];
  readonly limits?: Limits;
  /** Below this the film does not form, whatever the time. */
  readonly minFilmTempC?: number;
  readonly activationKJPerMol?: number;
  /** Depth in mm that the marks hold for; deeper fills grow with the square. */
  readonly sheetDepthMm?: number;
  /** Deepest fill laid in one go; deeper ones in lifts. */
  readonly maxLiftMm?: number;
  /** Hours from mixing to unusable at reference air (two-part). */
  readonly potLife?: SheetHours;
  /** Hours a spread glue line stays open before it must be closed. */
  readonly openTime?: SheetHours;
  /** Hours after closing in which a glue line may still be shifted; then it must be under pressure and left alone. */
  readonly closedTime?: SheetHours;
  /** Hours after application in which the excess is wiped or buffed off (stain, oil, wax, grain filler). */
  readonly wipeOff?: SheetHours;
  /** Hours after which a tape must be off again. */
  readonly removeWithin?: SheetHours;
  readonly coverageM2PerL?: Spread & { readonly source: Provenance };
  readonly volumeSolidsPercent?: Spread & { readonly source: Provenance };
  /** Of one coat by the sheet, µm: with the volume solids it gives the spreading rate where no coverage is named. */
  readonly dryFilmUm?: Spread & { readonly source: Provenance };
  readonly thinning?: { readonly with: string; readonly percent: number; readonly source: Provenance };
  /** What it is sold in; absent: it is not bought. */
  readonly containers?: readonly Quantity[];
  readonly stack: readonly StackRule[];
  readonly cautions: readonly string[];
  /** Rags wet with it can heat themselves to fire. */
  readonly oilyRags?: boolean;
  readonly flammableVapour?: boolean;
  readonly isocyanate?: boolean;
  /** Share of the wet film that is solvent vapour, grams a litre, for the ventilation warning. */
  readonly solventGPerL?: number;
  /** A published limit for the vapour of its solvent in the air that people breathe. */
  readonly solventLimit?: { readonly of: string; readonly mgPerM3: number; readonly source: Provenance };
  readonly source: Provenance;
}

/** A film laid down by one step. */
export interface Film {
  readonly material: string;
  /** Wet film relative to the sheet's; 1 is the sheet's own. */
  readonly thickness: number;
  /** For filler, putty and caulk: depth of the fill. */
  readonly depthMm?: number;
}

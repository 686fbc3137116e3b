import type { Minute, Span } from '../time/span.ts';
import type { RecipeStep } from './recipe.ts';

/** Thickness of boards where nothing better is known: common practice, no source. */
export const USUAL_THICKNESS_MM = 19;

/** A named part of a recipe, slotted in before or after one of the recipe's steps; at the beginning where it says neither. */
export interface PartSlot {
  /** Id of a part: `recipes/parts/NAME.yaml`. */
  readonly part: string;
  readonly before?: string;
  readonly after?: string;
}

/** A stay with somebody else, such as an upholsterer: no step is done meanwhile. Its end is what was promised. */
export interface Away extends Span {
  /** With whom, or where. */
  readonly at: string;
}

export interface Section {
  readonly id: string;
  readonly name: string;
  readonly recipe: string;
  readonly areaM2: number;
  readonly items: number;
  /** Section that this one cannot be taken off: the two are never worked on at once. */
  readonly attachedTo?: string;
  /** Of the wood, for how fast it follows the air's temperature. */
  readonly thicknessMm: number;
  /** Recipe's material id -> the one used instead. */
  readonly materials: Readonly<Record<string, string>>;
  /** Recipe's step ids left out. */
  readonly without: readonly string[];
  /** Parts slotted into the recipe; absent: none. */
  readonly with?: readonly PartSlot[];
  /** Absent: it never leaves. */
  readonly away?: readonly Away[];
}

export interface Piece {
  /** File name without ending. */
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  /** In the shop from then on. */
  readonly arrives?: Minute;
  readonly wantedBy?: Minute;
  /** Minor units of the shop's currency. */
  readonly priceMinor: number;
  readonly costMinor: number;
  readonly mayCarryLead: boolean;
  /** Its file says neither yes nor no to that. */
  readonly leadUnsaid?: true;
  /** The test that opens the gate, once it is recorded. */
  readonly leadTest?: { readonly minute: Minute; readonly found: boolean };
  readonly sections: readonly Section[];
  /** Stays of the whole piece; absent: none. */
  readonly away?: readonly Away[];
  /** Recipe of the steps that join all sections, e.g. dismantle and refit. */
  readonly whole?: string;
  /** Steps that join two sections; each names the section it belongs to. */
  readonly joins: readonly (RecipeStep & { readonly section: string })[];
}

import type { Minute } from '../time/span.ts';
import type { Estimate } from './estimate.ts';
import type { Fault, OldFinish } from './found.ts';
import type { Counts, Kind, Size } from './kinds.ts';
import type { Wood } from './woods.ts';

/** A section as the person agreed to it. */
export interface AgreedSection extends Estimate {
  /** Id of the recipe that is wanted on it, or that its role brings. */
  readonly recipe: string;
  /** Section that it cannot be taken off. */
  readonly attachedTo?: string;
}

/** May the old finish hold lead, and what did a test say? */
export type Lead = 'no' | 'may' | { readonly on: string; readonly found: boolean };

/** All that `intake` was told of a piece. */
export interface Answers {
  readonly id: string;
  readonly name: string;
  readonly kind: Kind;
  readonly size?: Size;
  readonly counts: Counts;
  readonly sections: readonly AgreedSection[];
  /** What the piece has and the shop cannot do, in words. */
  readonly notDoable: readonly string[];
  /** Ids of the sections on which each fault was found. */
  readonly found: Readonly<Partial<Record<Fault, readonly string[]>>>;
  readonly wood: Wood;
  readonly oldFinish: OldFinish;
  /** A dark old finish, or stain, goes under a light colour. */
  readonly darkToLight: boolean;
  readonly lead: Lead;
  /** Days and times as they are written. */
  readonly arrives: string;
  readonly wantedBy?: string;
  readonly priceMinor?: number;
  readonly costMinor?: number;
  readonly takenInAt: Minute;
}

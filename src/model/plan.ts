import type { Minute, Span } from '../time/span.ts';
import type { Mark } from './mark.ts';
import type { Preparation } from './material.ts';
import type { Stage } from './recipe.ts';

/** When a mark is reached if all goes fast, as usual, or slowly. */
export interface MarkTimes {
  readonly early: Minute;
  readonly typical: Minute;
  readonly late: Minute;
}

export interface PlannedWindow {
  readonly opens: Minute;
  readonly shuts?: Minute;
  readonly prep?: Preparation;
  /** Id of the step whose film the window belongs to. */
  readonly of: string;
}

export interface PlannedStep {
  /** Task id, `PIECE/SECTION/STEP`. */
  readonly id: string;
  readonly piece: string;
  readonly section: string;
  readonly step: string;
  readonly title: string;
  readonly stage: Stage;
  readonly coat?: number;
  readonly material?: string;
  readonly way: string;
  readonly room: string;
  readonly station: string;
  readonly hands: readonly string[];
  readonly tools: readonly string[];
  /** Hands-on work; several spans where it pauses. Never empty. */
  readonly spans: readonly Span[];
  readonly holdsStationUntil: Minute;
  readonly dry?: Partial<Readonly<Record<Mark, MarkTimes>>>;
  readonly window?: PlannedWindow;
  /** What it had to wait for, and until when. */
  readonly after: readonly { readonly step: string; readonly mark?: Mark; readonly notBefore: Minute }[];
  /** Id of the step that it follows to the minute, by the same hands. It takes no slot of its station. */
  readonly atOnceAfter?: string;
  /** Absent where the work is in the room already. */
  readonly broughtIn?: BroughtIn;
  /** As the journal says; never moved. */
  readonly done?: true;
  /** Begun and not yet ended. */
  readonly atWork?: true;
}

/** Work that comes from another room before a step. */
export interface BroughtIn {
  /** Id of that room. */
  readonly from: string;
  /** When the plan takes it to be carried: as soon as it can be moved and somebody is in. */
  readonly at: Minute;
  /** Carried later than this, it would still be too cold for the coats that are planned here. */
  readonly by: Minute;
}

/** Coats that share one mixing and one wash-up. */
export interface PlannedSession {
  /** Ids of its steps, in order. */
  readonly steps: readonly string[];
  /** Minutes of work that it saves against doing each by itself. */
  readonly savedMinutes: number;
}

export interface ReadyTime {
  readonly typical: Minute;
  readonly safe: Minute;
  /** Chance that `safe` holds, 0 to 1. */
  readonly chance: number;
}

export interface PlannedPiece {
  readonly id: string;
  readonly name: string;
  readonly wantedBy?: Minute;
  readonly lateHours: number;
  readonly ready: Partial<Readonly<Record<Mark | 'listed' | 'handedOver', ReadyTime>>>;
}

export interface Proof {
  readonly objective: readonly { readonly name: string; readonly value: number; readonly bound: number }[];
  readonly gapPercent: number;
  readonly proven: boolean;
  readonly verified: true;
  readonly steps: number;
}

export interface Warning {
  readonly code: string;
  readonly text: string;
  readonly step?: string;
}

export interface Plan {
  readonly madeAt: Minute;
  /** Fingerprint of all that the plan was made from; absent where nobody keeps it. */
  readonly basis?: string;
  readonly timeZone: string;
  readonly from: Minute;
  readonly to: Minute;
  readonly pieces: readonly PlannedPiece[];
  /** In order of start. */
  readonly steps: readonly PlannedStep[];
  /** In order of start; absent where nothing is shared. */
  readonly sessions?: readonly PlannedSession[];
  readonly proof: Proof;
  readonly warnings: readonly Warning[];
}

export function startOf(step: Pick<PlannedStep, 'spans'>): Minute {
  return step.spans[0]?.start ?? 0;
}

export function endOf(step: Pick<PlannedStep, 'spans'>): Minute {
  return step.spans.at(-1)?.end ?? 0;
}

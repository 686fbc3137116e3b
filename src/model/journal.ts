import type { Minute } from '../time/span.ts';
import type { Mark } from './mark.ts';

/** What a person can see at the bench. */
export const sightings = ['wet', 'tacky', 'dry', 'hard'] as const;
export type Sighting = (typeof sightings)[number];

export const coatFaults = ['runs', 'fish-eyes', 'scratched-through', 'blush', 'wrinkles', 'dust-nibs'] as const;
export type CoatFault = (typeof coatFaults)[number];

/** What was done or seen. `task` is a task id. */
export type Deed =
  | {
      readonly kind: 'done';
      readonly task: string;
      readonly from: Minute;
      readonly to: Minute;
      readonly station?: string;
      readonly way?: string;
      /** Ids of who did it. */
      readonly hands?: readonly string[];
      /** `from` and `to` are as somebody stated them, not worked out from what is usual. */
      readonly timed?: true;
      /** How much of its material it took: litres, or metres of a tape. */
      readonly used?: number;
      readonly air?: { readonly tempC: number; readonly rhPercent: number };
    }
  | { readonly kind: 'begun'; readonly task: string; readonly from: Minute }
  | { readonly kind: 'seen'; readonly task: string; readonly sighting: Sighting; readonly mark?: Mark }
  /** Not before that time. */
  | { readonly kind: 'slipped'; readonly task: string; readonly until: Minute }
  | { readonly kind: 'skipped'; readonly task: string }
  /** Done once more. */
  | { readonly kind: 'repeated'; readonly task: string }
  /** The coat failed: sand back and do it again. */
  | { readonly kind: 'failed'; readonly task: string; readonly fault: CoatFault }
  | { readonly kind: 'lead-test'; readonly piece: string; readonly found: boolean }
  /** Takes back the entry with that number. */
  | { readonly kind: 'undo'; readonly entry: number };

export interface Entry {
  /** 1, 2, 3 … without a gap. */
  readonly number: number;
  readonly at: Minute;
  readonly deed: Deed;
}

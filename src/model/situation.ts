import type { Minute } from '../time/span.ts';
import type { Book } from './book.ts';
import type { Sighting } from './journal.ts';
import type { Paces } from './paced-work.ts';
import type { Task } from './task.ts';

/** A task that is over, as the journal says. What it does not say is undefined. */
export interface DoneStep {
  readonly from: Minute;
  readonly to: Minute;
  readonly station?: string;
  readonly way?: string;
  readonly hands?: readonly string[];
  /** How much of its material it took: litres, or metres of a tape. */
  readonly used?: number;
  /** Its times are as somebody stated them. */
  readonly timed?: true;
}

/** What is known at one moment: the files, and what the journal made of their tasks. */
export interface Situation {
  readonly book: Book;
  readonly now: Minute;
  /** All that belongs to a piece, done or not; without what was skipped, with what must be done again. */
  readonly tasks: readonly Task[];
  readonly done: ReadonlyMap<string, DoneStep>;
  /** Begun and not yet over: task id -> when it began. */
  readonly atWork: ReadonlyMap<string, Minute>;
  /** Put off by the user: task id -> not before. */
  readonly notBefore: ReadonlyMap<string, Minute>;
  /** What was seen of a film, in order: task id -> sightings. */
  readonly sightings: ReadonlyMap<string, readonly { readonly at: Minute; readonly sighting: Sighting }[]>;
  /** What the times of the journal say of each hand's pace; hands that are not named keep the recipes' minutes. */
  readonly paces: Paces;
  /** What was done last of a section, and since when it is no longer there: the plan that the shop follows had it carried. */
  readonly carried?: ReadonlyMap<string, Minute>;
  /** Piece id -> result of the lead test recorded in its file or in the journal. */
  readonly leadTests: ReadonlyMap<string, { readonly at: Minute; readonly found: boolean }>;
}

import type { Book } from '../../model/book.ts';
import type { Plan } from '../../model/plan.ts';
import type { UnfitHours } from '../bench.ts';
import { namesOf, type Names } from '../names.ts';
import type { Manner } from '../say-time.ts';
import { keptManner } from '../calendar/moment.ts';

/** What is drawn. */
export interface WallInput {
  readonly plan: Plan;
  readonly book: Book;
  readonly unfit: readonly UnfitHours[];
  /** What is to be said for care, by task id. */
  readonly cautions: ReadonlyMap<string, readonly string[]>;
}

/** The same with the words to say it in. */
export interface Drawing extends WallInput {
  readonly names: Names;
  readonly manner: Manner;
}

export function drawingOf(input: WallInput): Drawing {
  return { ...input, names: namesOf(input.book), manner: keptManner(input.book.shop) };
}

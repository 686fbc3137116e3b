import { join } from 'node:path';
import { readBook } from '../../src/files/read-book.ts';
import { shippedDir } from '../../src/files/shipped.ts';
import type { Book } from '../../src/model/book.ts';
import { makePlan, type Made } from '../../src/planning/make-plan.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { minuteAt } from '../../src/time/zone.ts';

/** The demo shop as shipped. */
export function demoBook(): Book {
  const { book, findings } = readBook(join(shippedDir(), 'shared/demo'), { shippedDir: shippedDir() });
  if (book === undefined) throw new Error(JSON.stringify(findings));
  return book;
}

export const demoNow = minuteAt('2027-01-11', 7 * 60 + 30, 'Europe/Brussels');

/** The demo week's plan; it must exist. */
export function demoPlan(
  steps?: number,
): Extract<Made, { kind: 'plan' }> & { situation: ReturnType<typeof situationOf> } {
  const situation = situationOf(demoBook(), demoNow);
  const made = makePlan(situation, { seed: 1, ...(steps !== undefined && { steps }) });
  if (made.kind !== 'plan') throw new Error(JSON.stringify(made.kind === 'broken' ? made.breaches : made.conflict));
  return { ...made, situation };
}

import type { Book } from '../model/book.ts';
import type { Plan } from '../model/plan.ts';
import { verify } from '../verify/verify.ts';
import { airFor } from './air-for.ts';
import { asCarried } from './as-carried.ts';
import type { Standing } from './current-plan.ts';
import { factorsOf } from './factors.ts';
import { horizonOf, STRETCH } from './horizon.ts';
import { limitsMissedIn, withoutLimits } from './missed-limits.ts';
import { situationOf } from './situation-of.ts';

/** The plan with the evidence that it was made on, checked again by the verifier; undefined where it breaks a rule. */
export function asMade(book: Book, plan: Plan): Standing | undefined {
  const then = situationOf(book, plan.from);
  const situation = asCarried(withoutLimits(then, limitsMissedIn(plan.warnings)), plan);
  for (const stretch of [1, STRETCH]) {
    const air = airFor(situation, horizonOf(then, stretch));
    const factors = factorsOf(situation, air, plan);
    if (verify({ situation, air, factors }, plan).length === 0) return { plan, air, factors };
  }
  return undefined;
}

import type { ShopAir } from '../air/shop-air.ts';
import type { Book } from '../model/book.ts';
import { endOf, startOf, type Plan } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import { verify } from '../verify/verify.ts';
import { localDay } from '../time/zone.ts';
import { airFor } from './air-for.ts';
import { asCarried } from './as-carried.ts';
import { factorsOf } from './factors.ts';
import { horizonOf, STRETCH } from './horizon.ts';
import { limitsMissedIn, withoutLimits } from './missed-limits.ts';
import { situationOf } from './situation-of.ts';

/** A plan with the air and the factors that it was made with. */
export interface Standing {
  readonly plan: Plan;
  readonly air: ShopAir;
  readonly factors: ReadonlyMap<string, number>;
}

/**
 * May the plan be followed as it is? It must have been made from just this book, before now, and ask for nothing in the
 * past that nobody has entered. `patient`: what was to be done since midnight may still be entered today.
 */
export function stillFits(plan: Plan, basis: string, situation: Situation, patient: boolean): boolean {
  const { now, book } = situation;
  if (plan.basis !== basis || plan.from > now) return false;
  const today = localDay(now, book.shop.timeZone).start;
  return plan.steps.every((step) => {
    if (step.done === true) return true;
    if (patient) return endOf(step) >= today;
    return step.atWork === true ? endOf(step) >= now : startOf(step) >= now;
  });
}

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

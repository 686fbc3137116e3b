import type { ShopAir } from '../air/shop-air.ts';
import { endOf, startOf, type Plan } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import { localDay } from '../time/zone.ts';

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

import type { Plan } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import { makePlan, type Made } from '../planning/make-plan.ts';
import { situationOf } from '../planning/situation-of.ts';
import { CannotGoOn } from './call.ts';
import type { OpenShop } from './open-shop.ts';

/** Any number would do; the same one gives the same plan. */
const seed = 1;

export type Planned = Extract<Made, { kind: 'plan' }> & { readonly situation: Situation; readonly plan: Plan };

/**
 * The plan of all that is left to do, made anew.
 * @throws CannotGoOn, exit code 1, where none exists.
 */
export function planOf(shop: OpenShop): Planned {
  const situation = situationOf(shop.book, shop.now);
  const made = makePlan(situation, { seed });
  if (made.kind === 'plan') return { ...made, situation };
  if (made.kind === 'broken')
    throw new Error(`the plan breaks a rule, so it is not shown: ${made.breaches[0]?.text ?? ''}`);
  throw new CannotGoOn(
    made.proven ? 'no plan exists: these demands cannot hold together' : 'no plan was found',
    undefined,
    1,
  );
}

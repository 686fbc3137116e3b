import type { Plan } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import { makePlan, type Made } from '../planning/make-plan.ts';
import { situationOf } from '../planning/situation-of.ts';
import { progressOn } from '../terminal/progress.ts';
import { CannotGoOn, type Call } from './call.ts';
import type { OpenShop } from './open-shop.ts';

/** Any number would do; the same one gives the same plan. */
const seed = 1;

export type Planned = Extract<Made, { kind: 'plan' }> & { readonly situation: Situation; readonly plan: Plan };

/**
 * The plan of all that is left to do, made anew.
 * @throws CannotGoOn, exit code 1, where none exists.
 */
export function planOf(call: Call, shop: OpenShop): Planned {
  const situation = situationOf(shop.book, shop.now);
  const progress = progressOn(call.io);
  progress.say('planning …');
  const onBetter = (value: number, bound: number) =>
    progress.say(`planning … at most ${value === 0 ? 0 : Math.ceil((100 * (value - bound)) / value)} % from the best`);
  const made = makePlan(situation, { seed, onBetter });
  progress.end();
  if (made.kind === 'plan') return { ...made, situation };
  if (made.kind === 'broken')
    throw new Error(`the plan breaks a rule, so it is not shown: ${made.breaches[0]?.text ?? ''}`);
  throw new CannotGoOn(
    made.proven ? 'no plan exists: these demands cannot hold together' : 'no plan was found',
    undefined,
    1,
  );
}

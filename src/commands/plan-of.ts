import { realDisk } from '../files/disk.ts';
import { withLock } from '../files/lock.ts';
import { PLAN_FILE, readPlan, writePlan } from '../files/plan-file.ts';
import type { Plan } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import { makePlan, type Made } from '../planning/make-plan.ts';
import { situationOf } from '../planning/situation-of.ts';
import { harmless } from '../terminal/harmless.ts';
import { progressOn } from '../terminal/progress.ts';
import { CannotGoOn, type Call } from './call.ts';
import type { OpenShop } from './open-shop.ts';

/** Any number would do; the same one gives the same plan. */
const seed = 1;

export type Planned = Extract<Made, { kind: 'plan' }> & { readonly situation: Situation; readonly plan: Plan };

/** The plan that the shop follows; one that cannot be read is said and left aside, for a new one is made anyway. */
function keptPlan(call: Call, shop: OpenShop): { readonly kept?: Plan } {
  const { plan, findings } = readPlan(shop.folder);
  for (const { message } of findings)
    call.io.stderr.write(`drybench: ${PLAN_FILE} is left aside: ${harmless(message)}\n`);
  return plan === undefined ? {} : { kept: plan };
}

/** Keeps the plan as the one that the shop follows. */
export function keepPlan(shop: OpenShop, plan: Plan): void {
  withLock(realDisk, shop.folder, 'week', () => writePlan(shop.folder, plan));
}

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
  const made = makePlan(situation, { seed, onBetter, ...keptPlan(call, shop) });
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

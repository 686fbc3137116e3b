import { fingerprint } from '../files/fingerprint.ts';
import { readOnce, type Reading } from '../files/read-once.ts';
import type { Plan } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import { basisText } from '../planning/basis.ts';
import type { Standing } from '../planning/current-plan.ts';
import { situationOf } from '../planning/situation-of.ts';
import { harmless } from '../terminal/harmless.ts';
import { CannotGoOn, type Call } from './call.ts';
import { memoryOf } from './memory.ts';
import type { OpenShop } from './open-shop.ts';
import { worded } from '../words/worded.ts';

/** Any number would do; the same one gives the same plan. */
export const seed = 1;

export interface Planned extends Standing {
  readonly situation: Situation;
  /** The plan that the shop followed until now, if there is one. */
  readonly kept?: Plan;
}

/**
 * The plan that the shop follows; one that cannot be read is said and left aside, for a new one is made anyway.
 * @throws CannotGoOn where a newer Drybench wrote it: it must not be put in the place of what that one knows.
 */
async function keptPlan(call: Call, shop: OpenShop): Promise<Reading<Plan | undefined>> {
  const name = JSON.stringify(['plan', shop.folder]);
  const { value, ...of } = await readOnce(memoryOf(call), name, async (disk) => {
    const { readPlan } = await import('../files/plan-file.ts');
    return readPlan(shop.folder, disk);
  });
  const { plan, findings } = value;
  if (findings.length === 0) return { value: plan, ...of };
  const { PLAN_FILE } = await import('../files/plan-file.ts');
  if (findings.some((f) => f.code === 'newer-plan'))
    throw new CannotGoOn(worded`${PLAN_FILE} cannot be read`, undefined, 2, findings);
  for (const { message } of findings)
    call.io.stderr.write(worded`drybench: ${PLAN_FILE} is left aside: ${harmless(message)}\n`);
  return { value: plan, ...of };
}

/** What a plan is made from. */
export interface Grounds {
  readonly situation: Situation;
  /** Fingerprint of the shop's files. */
  readonly basis: string;
  /** The plan that the shop follows. */
  readonly kept?: Plan;
  /** Of the reading of that plan. */
  readonly keptSum?: string;
}

export async function groundsOf(call: Call, shop: OpenShop): Promise<Grounds> {
  const { value: kept, sum: keptSum } = await keptPlan(call, shop);
  const basis = fingerprint(basisText(shop.book));
  return { situation: situationOf(shop.book, shop.now), basis, ...(kept && { kept }), ...(keptSum && { keptSum }) };
}

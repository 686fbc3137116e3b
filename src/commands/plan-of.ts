import { readOnce } from '../files/read-once.ts';
import type { Plan } from '../model/plan.ts';
import { asMade, type Standing, stillFits } from '../planning/current-plan.ts';
import { isFlagged, type Call } from './call.ts';
import { memoryOf } from './memory.ts';
import type { OpenShop } from './open-shop.ts';
import { groundsOf, type Grounds, type Planned } from './plan-grounds.ts';

/** Plans that were made from just these files and this journal. */
function plansBefore(call: Call, { folder }: OpenShop, basis: string): Promise<readonly Plan[]> {
  return readOnce(memoryOf(call), JSON.stringify(['plans', folder, basis]), async (disk) => {
    const { plansMadeFrom } = await import('../files/plan-history.ts');
    return [...plansMadeFrom(folder, basis, disk)];
  });
}

/** A plan that was followed before and still says all that there is to say. */
async function followedBefore(
  call: Call,
  shop: OpenShop,
  { situation, basis, kept }: Grounds,
  patient: boolean,
): Promise<Standing | undefined> {
  const fitting = (plan: Plan): Standing | undefined =>
    stillFits(plan, basis, situation, patient) ? asMade(shop.book, plan) : undefined;
  const standing = kept && fitting(kept);
  if (standing !== undefined) return standing;
  for (const plan of await plansBefore(call, shop, basis)) {
    const found = fitting(plan);
    if (found !== undefined) return found;
  }
  return undefined;
}

/**
 * The plan of all that is left to do: the one that the shop follows where it still fits, else a new one near it. Who only
 * looks (`patient`) is shown the plan of the day also where what it says was not entered yet.
 * @throws CannotGoOn, exit code 1, where none exists.
 */
export async function planOf(call: Call, shop: OpenShop, patient = true): Promise<Planned> {
  const grounds = await groundsOf(call, shop);
  const { situation, kept } = grounds;
  const anew = isFlagged(call, 'anew');
  const standing = !anew ? await followedBefore(call, shop, grounds, patient) : undefined;
  if (standing !== undefined) return { ...standing, situation, ...(kept && { kept }) };
  // Loaded only where there is something to search for.
  const { planNow, rememberLook } = await import('./plan-anew.ts');
  const planned = planNow(call, shop, grounds, { anew });
  if (patient && !anew) rememberLook(shop, planned.plan);
  return planned;
}

import type { AirSeries } from '../air/series.ts';
import { dayTotals, type DayTotals, recallDayTotals } from '../drying/dose.ts';
import { readOnce, workedOutOnce, type Reading } from '../files/read-once.ts';
import type { Plan } from '../model/plan.ts';
import { stillFits, type Standing } from '../planning/current-plan.ts';
import { isFlagged, type Call } from './call.ts';
import { memoryOf } from './memory.ts';
import type { OpenShop } from './open-shop.ts';
import { groundsOf, type Grounds, type Planned } from './plan-grounds.ts';

/** Plans that were made from just these files and this journal. */
async function plansBefore(call: Call, { folder }: OpenShop, basis: string): Promise<readonly Reading<Plan>[]> {
  const name = JSON.stringify(['plans', folder, basis]);
  const { value, sum } = await readOnce(memoryOf(call), name, async (disk) => {
    const { plansMadeFrom } = await import('../files/plan-history.ts');
    return [...plansMadeFrom(folder, basis, disk)];
  });
  return value.map((plan, k) => ({ value: plan, ...(sum && { sum: `${sum} ${k}` }) }));
}

/**
 * A plan that was read, with the evidence that it was made on, if it has passed the verifier: just now, or before, this very
 * plan with these very files. What did not pass is looked at again each time. With the air goes what was summed up of drying.
 */
async function passed(call: Call, shop: OpenShop, { value: plan, sum }: Reading<Plan>): Promise<Standing | undefined> {
  // Where supplies are read, too, the book is another.
  const name = JSON.stringify(['passed', shop.folder, shop.book.supplies !== undefined]);
  const evidence = await workedOutOnce(memoryOf(call), name, [shop.sum, sum], async () => {
    const { asMade } = await import('../planning/as-made.ts');
    const made = asMade(shop.book, plan);
    const totals = [...(made?.air ?? [])].map(([, air]): [AirSeries, DayTotals] => [air, dayTotals(air)]);
    return made && { air: made.air, factors: made.factors, totals };
  });
  for (const [air, totals] of evidence?.totals ?? []) recallDayTotals(air, totals);
  return evidence && { plan, air: evidence.air, factors: evidence.factors };
}

/** A plan that was followed before and still says all that there is to say. */
async function followedBefore(
  call: Call,
  shop: OpenShop,
  { situation, basis, kept, keptSum }: Grounds,
  patient: boolean,
): Promise<Standing | undefined> {
  const fitting = async (read: Reading<Plan>): Promise<Standing | undefined> =>
    stillFits(read.value, basis, situation, patient) ? passed(call, shop, read) : undefined;
  const standing = kept && (await fitting({ value: kept, ...(keptSum && { sum: keptSum }) }));
  if (standing !== undefined) return standing;
  for (const plan of await plansBefore(call, shop, basis)) {
    const found = await fitting(plan);
    if (found !== undefined) return found;
  }
  return undefined;
}

/**
 * The plan of all that is left to do: the one that the shop follows where it still fits, else a new one near it. Who only
 * looks is shown the plan of the day also where what it says was not entered yet.
 * @throws CannotGoOn, exit code 1, where none exists.
 */
export async function planOf(call: Call, shop: OpenShop): Promise<Planned> {
  const grounds = await groundsOf(call, shop);
  const anew = isFlagged(call, 'anew');
  const standing = await standingPlan(call, shop, grounds, { anew, patient: true });
  if (standing !== undefined) return standing;
  // Loaded only where there is something to search for.
  const { planAnew, rememberLook } = await import('./plan-anew.ts');
  const planned = await planAnew(call, shop, grounds, { anew });
  // What was cut short is good for a look, but the next one is to be as good as any.
  if (!anew && !call.halt.early) rememberLook(call, shop, planned.plan);
  return planned;
}

/**
 * The same for who plans.
 * @throws CannotGoOn, exit code 1, where none exists.
 */
export async function planToFollow(call: Call, shop: OpenShop): Promise<Planned> {
  const grounds = await groundsOf(call, shop);
  const anew = isFlagged(call, 'anew');
  const standing = await standingPlan(call, shop, grounds, { anew, patient: false });
  if (standing !== undefined) return standing;
  const { planAnew } = await import('./plan-anew.ts');
  return planAnew(call, shop, grounds, { anew });
}

async function standingPlan(
  call: Call,
  shop: OpenShop,
  grounds: Grounds,
  { anew, patient }: { readonly anew: boolean; readonly patient: boolean },
): Promise<Planned | undefined> {
  const { situation, kept } = grounds;
  const standing = anew ? undefined : await followedBefore(call, shop, grounds, patient);
  return standing && { ...standing, situation, ...(kept && { kept }) };
}

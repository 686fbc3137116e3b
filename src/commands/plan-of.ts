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
  const planned = await planNow(call, shop, grounds, { anew });
  if (patient && !anew) rememberLook(call, shop, planned.plan);
  return planned;
}

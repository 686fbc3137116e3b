import { FileTrouble } from '../files/file-trouble.ts';
import { withLock } from '../files/lock.ts';
import { rememberPlan } from '../files/plan-history.ts';
import { PLAN_FILE, writePlan } from '../files/plan-file.ts';
import { setPlanAside } from '../files/repair-shop.ts';
import type { Plan } from '../model/plan.ts';
import type { MakeOptions } from '../planning/make-plan.ts';
import { CannotGoOn, isFlagged, type Call } from './call.ts';
import type { OpenShop } from './open-shop.ts';
import { groundsOf, type Grounds, type Planned } from './plan-grounds.ts';
import { searchStoppably } from './search-stoppably.ts';
import { worded } from '../words/worded.ts';

const MS_PER_SECOND = 1000;

/**
 * Keeps the plan as the one that the shop follows, and remembers it for when its entries are all that stand again. One
 * that stood there and could not be read is kept under another name.
 */
export function keepPlan(call: Call, shop: OpenShop, plan: Plan): void {
  withLock(call.disk, shop.folder, 'week', () => {
    const aside = setPlanAside(shop.folder, call.disk);
    if (aside !== undefined && !isFlagged(call, 'dryRun'))
      call.io.stderr.write(worded`drybench: what stood in ${PLAN_FILE} is now in ${aside.copy}\n`);
    writePlan(shop.folder, plan, call.disk);
    rememberPlan(shop.folder, plan, call.disk);
  });
}

/**
 * Remembers a plan that was only looked at, so that the next look need not search for it. Where that cannot be written,
 * because another command is writing or the folder may not be written to, the answer is the same without.
 */
export function rememberLook({ disk }: Call, shop: OpenShop, plan: Plan): void {
  try {
    withLock(disk, shop.folder, 'look', () => rememberPlan(shop.folder, plan, disk), { waitMs: 0 });
  } catch (error) {
    if (!(error instanceof FileTrouble)) throw error;
  }
}

/** More of how a plan is searched for. */
interface HowLong extends Pick<MakeOptions, 'anew' | 'goOn'> {
  /** Milliseconds since 1970-01-01T00:00Z. */
  readonly until?: number;
}

/** @throws CannotGoOn, exit code 1, where no plan exists. */
export async function planAnew(
  call: Call,
  { book, now, manner }: OpenShop,
  { situation, basis, kept }: Grounds,
  { until, ...options }: HowLong,
): Promise<Planned> {
  const ask = { book, now, manner, basis, ...(kept && { kept }), ...options };
  const steps = situation.tasks.filter((task) => !situation.done.has(task.id)).length;
  const wanted = { saying: worded`planning …`, steps, ...(until !== undefined && { until }) };
  const made = await searchStoppably(call, 'plan', ask, wanted);
  if (made.kind === 'none') throw new CannotGoOn(made.message, made.advice, 1, [], made.demands);
  const { plan, air, factors } = made;
  return { plan, air, factors, situation, ...(kept && { kept }) };
}

/**
 * A plan of all that is left to do, made anew and searched for so many seconds.
 * @throws CannotGoOn, exit code 1, where none exists.
 */
export async function planFor(call: Call, shop: OpenShop, seconds: number): Promise<Planned> {
  const until = call.io.clock() + seconds * MS_PER_SECOND;
  return planAnew(call, shop, await groundsOf(call, shop), { anew: true, goOn: true, until });
}

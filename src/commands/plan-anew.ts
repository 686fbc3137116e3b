import { FileTrouble } from '../files/file-trouble.ts';
import { withLock } from '../files/lock.ts';
import { rememberPlan } from '../files/plan-history.ts';
import { PLAN_FILE, writePlan } from '../files/plan-file.ts';
import { setPlanAside } from '../files/repair-shop.ts';
import type { Plan } from '../model/plan.ts';
import { asMade } from '../planning/as-made.ts';
import { makePlan, type MakeOptions } from '../planning/make-plan.ts';
import { waysOut } from '../planning/ways-out.ts';
import { namesOf } from '../reports/names.ts';
import { demandsOf, sayWaysOut } from '../reports/no-plan.ts';
import { whileSaying, type Progress } from '../terminal/progress.ts';
import { CannotGoOn, isFlagged, type Call } from './call.ts';
import { languageSpoken } from './language.ts';
import type { OpenShop } from './open-shop.ts';
import { groundsOf, seed, type Grounds, type Planned } from './plan-grounds.ts';
import { canSearchApart, searchApart } from './search-longer.ts';
import { worded } from '../words/worded.ts';

const MS_PER_SECOND = 1000;
/** More than any search takes before its time is up. */
const MANY_STEPS = 1_000_000_000;

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

/** Says with each better plan how far from the best it can be. */
function sayHowGood(say: Progress['say']) {
  return (value: number, bound: number): void => {
    const percent = value === 0 ? 0 : Math.ceil((100 * (value - bound)) / value);
    say(worded`planning … at most ${percent} % from the best`);
  };
}

export async function planNow(
  call: Call,
  shop: OpenShop,
  { situation, ...from }: Grounds,
  options: Pick<MakeOptions, 'anew' | 'steps' | 'stop'>,
): Promise<Planned> {
  const made = await whileSaying(call.io, worded`planning …`, ({ say, tick }) => {
    const stop = () => {
      tick();
      return options.stop?.() === true;
    };
    return makePlan(situation, { seed, onBetter: sayHowGood(say), ...from, ...options, stop });
  });
  if (made.kind === 'plan') {
    const { plan, air, factors } = made;
    return { plan, air, factors, situation, ...(from.kept && { kept: from.kept }) };
  }
  if (made.kind === 'broken')
    throw new Error(`the plan breaks a rule, so it is not shown: ${made.breaches[0]?.text ?? ''}`);
  const message = made.proven
    ? worded`no plan exists: these demands cannot hold together`
    : worded`no plan was found; in the way stand`;
  const names = namesOf(shop.book);
  const ways = await whileSaying(call.io, worded`looking for what would leave a plan …`, ({ tick }) =>
    waysOut(shop.now, made, seed, tick),
  );
  const advice = sayWaysOut(ways, names, shop.manner);
  throw new CannotGoOn(message, advice, 1, [], demandsOf(made, names));
}

/** A plan, and whether somebody cut its search short. */
export type Searched = Planned & { readonly interrupted: boolean };

/**
 * A plan of all that is left to do, made anew and searched for so many seconds; Ctrl-C ends the search earlier, and the
 * best plan found until then counts.
 * @throws CannotGoOn, exit code 1, where none exists.
 */
export async function planFor(call: Call, shop: OpenShop, seconds: number): Promise<Searched> {
  const until = call.io.clock() + seconds * MS_PER_SECOND;
  return planInterruptibly(call, shop, await groundsOf(call, shop), { anew: true, steps: MANY_STEPS, until });
}

/** A plan searched for `until` then, or as long as its steps last; Ctrl-C ends the search earlier as in `planFor`. */
export async function planInterruptibly(
  call: Call,
  shop: OpenShop,
  grounds: Grounds,
  { anew, steps, until = Infinity }: Pick<MakeOptions, 'steps'> & { readonly anew: boolean; readonly until?: number },
): Promise<Searched> {
  const { situation, ...from } = grounds;
  const options = { anew, ...(steps !== undefined && { steps }) };
  if (!canSearchApart()) {
    const stop = () => call.io.clock() >= until;
    return { ...(await planNow(call, shop, grounds, { ...options, stop })), interrupted: false };
  }
  const { plan, interrupted } = await whileSaying(call.io, worded`planning …`, ({ say }) =>
    searchApart(
      { book: shop.book, now: shop.now, ...from, seed, ...options, until, language: languageSpoken() },
      sayHowGood(say),
      () => {
        say(worded`stopping …`);
      },
    ),
  );
  const standing = plan && asMade(shop.book, plan);
  if (standing !== undefined) return { ...standing, situation, interrupted, ...(from.kept && { kept: from.kept }) };
  // Why there is none, a shorter search says as well.
  return { ...(await planNow(call, shop, grounds, { anew })), interrupted };
}

import { realDisk } from '../files/disk.ts';
import { FileTrouble } from '../files/file-trouble.ts';
import { withLock } from '../files/lock.ts';
import { fingerprint, plansMadeFrom, rememberPlan } from '../files/plan-history.ts';
import { PLAN_FILE, readPlan, writePlan } from '../files/plan-file.ts';
import { setPlanAside } from '../files/repair-shop.ts';
import type { Plan } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import { basisText } from '../planning/basis.ts';
import { asMade, type Standing, stillFits } from '../planning/current-plan.ts';
import { makePlan } from '../planning/make-plan.ts';
import { situationOf } from '../planning/situation-of.ts';
import { namesOf } from '../reports/names.ts';
import { demandsOf, mayFree } from '../reports/no-plan.ts';
import { harmless } from '../terminal/harmless.ts';
import { progressOn } from '../terminal/progress.ts';
import { CannotGoOn, isFlagged, numberFlag, type Call } from './call.ts';
import type { OpenShop } from './open-shop.ts';
import { translated, worded } from '../words/worded.ts';

/** Any number would do; the same one gives the same plan. */
export const seed = 1;

const MS_PER_SECOND = 1000;
/** More than any search takes before its time is up. */
const MANY_STEPS = 1_000_000_000;

export interface Planned extends Standing {
  readonly situation: Situation;
  /** The plan that the shop followed until now, if there is one. */
  readonly kept?: Plan;
}

/**
 * The plan that the shop follows; one that cannot be read is said and left aside, for a new one is made anyway.
 * @throws CannotGoOn where a newer Drybench wrote it: it must not be put in the place of what that one knows.
 */
function keptPlan(call: Call, shop: OpenShop): Plan | undefined {
  const { plan, findings } = readPlan(shop.folder);
  if (findings.some((f) => f.code === 'newer-plan'))
    throw new CannotGoOn(worded`${PLAN_FILE} cannot be read`, undefined, 2, findings);
  for (const { message } of findings)
    call.io.stderr.write(worded`drybench: ${PLAN_FILE} is left aside: ${harmless(message)}\n`);
  return plan;
}

/**
 * Keeps the plan as the one that the shop follows, and remembers it for when its entries are all that stand again. One
 * that stood there and could not be read is kept under another name.
 */
export function keepPlan(call: Call, shop: OpenShop, plan: Plan): void {
  withLock(realDisk, shop.folder, 'week', () => {
    const aside = setPlanAside(shop.folder);
    if (aside !== undefined)
      call.io.stderr.write(worded`drybench: what stood in ${PLAN_FILE} is now in ${aside.copy}\n`);
    writePlan(shop.folder, plan);
    rememberPlan(shop.folder, plan);
  });
}

/**
 * Remembers a plan that was only looked at, so that the next look need not search for it. Where that cannot be written,
 * because another command is writing or the folder may not be written to, the answer is the same without.
 */
function rememberLook(shop: OpenShop, plan: Plan): void {
  try {
    withLock(realDisk, shop.folder, 'look', () => rememberPlan(shop.folder, plan), { waitMs: 0 });
  } catch (error) {
    if (!(error instanceof FileTrouble)) throw error;
  }
}

/** A plan that was followed before and still says all that there is to say. */
function followedBefore(
  shop: OpenShop,
  situation: Situation,
  kept: Plan | undefined,
  patient: boolean,
): Standing | undefined {
  const basis = fingerprint(basisText(shop.book));
  const fitting = (plan: Plan): Standing | undefined =>
    stillFits(plan, basis, situation, patient) ? asMade(shop.book, plan) : undefined;
  const standing = kept && fitting(kept);
  if (standing !== undefined) return standing;
  for (const plan of plansMadeFrom(shop.folder, basis)) {
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
export function planOf(call: Call, shop: OpenShop, patient = true): Planned {
  const situation = situationOf(shop.book, shop.now);
  const kept = keptPlan(call, shop);
  const before = kept === undefined ? {} : { kept };
  // Only who plans anew says how long to search; elsewhere `--for` means something else.
  const seconds = patient ? 0 : numberFlag(call, 'for', 0, 1, 3600);
  const anew = seconds > 0 || isFlagged(call, 'anew');
  const standing = !anew ? followedBefore(shop, situation, kept, patient) : undefined;
  if (standing !== undefined) return { ...standing, situation, ...before };
  const progress = progressOn(call.io);
  progress.say(worded`planning …`);
  const onBetter = (value: number, bound: number) =>
    progress.say(
      worded`planning … at most ${value === 0 ? 0 : Math.ceil((100 * (value - bound)) / value)} % from the best`,
    );
  const until = call.io.clock() + seconds * MS_PER_SECOND;
  const longer = seconds === 0 ? {} : { steps: MANY_STEPS, stop: () => call.io.clock() >= until };
  const basis = fingerprint(basisText(shop.book));
  const made = makePlan(situation, { seed, onBetter, basis, anew, ...longer, ...before });
  progress.end();
  if (made.kind === 'plan') {
    const { plan, air, factors } = made;
    if (patient && !anew) rememberLook(shop, plan);
    return { plan, air, factors, situation, ...before };
  }
  if (made.kind === 'broken')
    throw new Error(`the plan breaks a rule, so it is not shown: ${made.breaches[0]?.text ?? ''}`);
  const message = made.proven
    ? worded`no plan exists: these demands cannot hold together`
    : worded`no plan was found; in the way stand`;
  throw new CannotGoOn(message, translated(mayFree), 1, [], demandsOf(made, namesOf(shop.book)));
}

import type { Book } from '../model/book.ts';
import type { Plan, PlannedPiece } from '../model/plan.ts';
import type { Minute } from '../time/span.ts';
import { type Change, changed, hoursAskedFor } from './change.ts';
import { type Made, makePlan } from './make-plan.ts';
import { situationOf } from './situation-of.ts';

const MINUTES_PER_DAY = 1440;

/** A change as it was asked for; the cost in minor units of the currency, where it was said. */
export interface Wish {
  readonly name: string;
  readonly said: string;
  readonly changes: readonly Change[];
  readonly costMinor?: number;
}

export interface Variant {
  readonly wish: Wish;
  /** Absent: no plan exists with this change. */
  readonly plan?: Plan;
  /** Days by which all pieces together can safely be handed over sooner. */
  readonly daysSooner: number;
  /** Hours less, over all pieces, past their wanted-by dates. */
  readonly lateHoursLess: number;
  readonly daysPerMajor?: number;
  readonly daysPerHour?: number;
}

export interface Comparison {
  readonly now: Plan;
  readonly variants: readonly Variant[];
  /** Name of the change that buys most for its money, or else for its hours; absent where neither is known or none helps. */
  readonly best?: { readonly name: string; readonly by: 'money' | 'hours' };
}

export interface CompareOptions {
  readonly seed: number;
  readonly steps?: number;
  readonly minorPerMajor: number;
  /** Told before each plan is made, that with no change among them: which one of how many, from 1 on. */
  readonly onPlan?: (plan: number, of: number) => void;
  /** Asked now and then; true ends the search: the change that is being looked at counts as it is, those after it are left out. */
  readonly stop?: () => boolean;
  /** Told with each plan found that has a change. */
  readonly onVariant?: () => void;
}

function handOver(piece: PlannedPiece): Minute | undefined {
  return piece.ready.handedOver?.safe;
}

function lateHours(plan: Plan, pieces: ReadonlySet<string>): number {
  return plan.pieces.filter((p) => pieces.has(p.id)).reduce((sum, p) => sum + p.lateHours, 0);
}

function daysSooner(now: Plan, then: Plan): number {
  const thenOf = new Map(then.pieces.map((p) => [p.id, handOver(p)]));
  const minutes = now.pieces.reduce((sum, p) => {
    const [a, b] = [handOver(p), thenOf.get(p.id)];
    return a === undefined || b === undefined ? sum : sum + a - b;
  }, 0);
  return minutes / MINUTES_PER_DAY;
}

function variantOf(book: Book, at: Minute, now: Plan, wish: Wish, options: CompareOptions): Variant {
  const other = wish.changes.reduce(changed, book);
  const made = near(other, at, now, options, options.onVariant);
  if (made.kind !== 'plan') return { wish, daysSooner: 0, lateHoursLess: 0 };
  const { plan } = made;
  const pieces = new Set(plan.pieces.map((p) => p.id));
  const days = daysSooner(now, plan);
  const hours = wish.changes.reduce((sum, change) => sum + hoursAskedFor(change), 0);
  const { costMinor = 0 } = wish;
  return {
    wish,
    plan,
    daysSooner: days,
    lateHoursLess: lateHours(now, pieces) - lateHours(plan, pieces),
    ...(costMinor > 0 && { daysPerMajor: (days * options.minorPerMajor) / costMinor }),
    ...(hours > 0 && { daysPerHour: days / hours }),
  };
}

function near(book: Book, at: Minute, kept: Plan, options: CompareOptions, onBetter?: () => void): Made {
  const { seed, steps, stop } = options;
  return makePlan(situationOf(book, at), {
    seed,
    kept,
    anew: true,
    ...(steps !== undefined && { steps }),
    ...(stop && { stop }),
    ...(onBetter && { onBetter }),
  });
}

function bestOf(variants: readonly Variant[]): Comparison['best'] {
  const by = (kind: 'money' | 'hours', worth: (v: Variant) => number | undefined): Comparison['best'] => {
    const [first] = variants
      .map((v) => ({ name: v.wish.name, worth: worth(v) ?? 0 }))
      .filter((v) => v.worth > 0)
      .sort((a, b) => b.worth - a.worth);
    return first && { name: first.name, by: kind };
  };
  return by('money', (v) => v.daysPerMajor) ?? by('hours', (v) => v.daysPerHour);
}

/**
 * The shop's plan beside plans with each wish. All begin from the plan that the shop follows, move what they like and take
 * the same effort, that with no change as well: else the further search, and not the change, would be what helps.
 */
export function compareWith(
  book: Book,
  at: Minute,
  kept: Plan,
  wishes: readonly Wish[],
  options: CompareOptions,
): Comparison {
  const { onPlan = () => undefined, stop = () => false } = options;
  const count = wishes.length + 1;
  onPlan(1, count);
  const base = near(book, at, kept, options);
  const now = base.kind === 'plan' ? base.plan : kept;
  const variants: Variant[] = [];
  for (const wish of wishes) {
    if (stop()) break;
    onPlan(variants.length + 2, count);
    variants.push(variantOf(book, at, now, wish, options));
  }
  // What was looked at less long than the others is not to lose to them for that.
  const best = stop() ? undefined : bestOf(variants);
  return { now, variants, ...(best && { best }) };
}

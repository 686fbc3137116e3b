/**
 * Drybench as a library: a shop's folder read, planned and checked, and the drying of one coat. Instants are whole minutes
 * since 1970-01-01T00:00Z (`Minute`); `timeOf` and `isoOf` turn them from and to what is written.
 * @packageDocumentation
 */
import type { AirSeries } from './air/series.ts';
import { markTimes } from './drying/dry-marks.ts';
import { readBook } from './files/read-book.ts';
import { shippedDir } from './files/shipped.ts';
import type { Book } from './model/book.ts';
import type { Finding } from './model/finding.ts';
import type { Mark } from './model/mark.ts';
import type { Material } from './model/material.ts';
import type { MarkTimes, Plan } from './model/plan.ts';
import { airFor } from './planning/air-for.ts';
import { factorsOf } from './planning/factors.ts';
import { horizonOf } from './planning/horizon.ts';
import { makePlan } from './planning/make-plan.ts';
import { situationOf } from './planning/situation-of.ts';
import type { Minute } from './time/span.ts';
import { readTime } from './time/zone.ts';
import type { Breach } from './verify/breach.ts';
import { verify as breachesOf } from './verify/verify.ts';

export type { Air, AirNote, AirSeries } from './air/series.ts';
export { sampleAir } from './air/series.ts';
export type { Book } from './model/book.ts';
export type { Finding, Place } from './model/finding.ts';
export type * from './model/journal.ts';
export type * from './model/mark.ts';
export type * from './model/material.ts';
export type * from './model/piece.ts';
export type * from './model/plan.ts';
export type { PieceDocument, PlanDocument, StepDocument } from './model/plan-document.ts';
export { planDocument } from './model/plan-document.ts';
export type * from './model/quantity.ts';
export type * from './model/recipe.ts';
export type * from './model/shop.ts';
export type * from './model/supply.ts';
export type { Minute, Span, Spans } from './time/span.ts';
export { isoOf } from './time/zone.ts';
export type { Breach } from './verify/breach.ts';

/** A shop as its files say, or what is wrong in them. */
export interface ReadShop {
  /** Absent where any finding is an error. */
  readonly shop?: Book;
  readonly findings: readonly Finding[];
}

/** Reads the folder of a shop, with the recipes and materials that come with Drybench. Writes nothing. */
export function readShop(folder: string): ReadShop {
  const { book, findings } = readBook(folder, { shippedDir: shippedDir() });
  return { ...(book && { shop: book }), findings };
}

/**
 * The instant that `written` names: `2027-01-11T07:30` on the wall clock of `zone`, or with its own offset.
 * @throws {RangeError} if it names none, with the reason.
 */
export function timeOf(written: string, zone: string): Minute {
  const time = readTime(written, zone);
  if (!time.ok) throw new RangeError(`"${written}": ${time.why}`);
  return time.minute;
}

export interface PlanWishes {
  /** The same seed gives the same plan. 1 if absent. */
  readonly seed?: number;
  /** Steps of search; by the size of the shop if absent. */
  readonly steps?: number;
  /** The plan that the shop follows now, to stay near. */
  readonly kept?: Plan;
}

/**
 * Plans all that is left to do in `shop` from `at` on. The plan has passed the verifier.
 * @throws {Error} if no plan was found; the message says whether none can exist.
 */
export function plan(shop: Book, at: Minute, { seed = 1, ...wishes }: PlanWishes = {}): Plan {
  const made = makePlan(situationOf(shop, at), { seed, ...wishes });
  if (made.kind === 'plan') return made.plan;
  if (made.kind === 'broken') throw new Error(`a defect in Drybench: ${made.breaches.map((b) => b.text).join('; ')}`);
  throw new Error(made.proven ? 'no plan can keep all demands' : 'no plan was found with this many steps of search');
}

/** Every rule that `planned`, made for `shop`, breaks; empty if it holds. Shares no code with the search. */
export function verify(shop: Book, planned: Plan): readonly Breach[] {
  const situation = situationOf(shop, planned.madeAt);
  const air = airFor(situation, Math.max(planned.to, horizonOf(situation)));
  return breachesOf({ situation, air, factors: factorsOf(situation, air, planned) }, planned);
}

/**
 * When a coat of `material`, of the thickness that its container means and finished at `from`, reaches each of its marks
 * in `air`: early, as usual and late.
 */
export function dryMarks(material: Material, air: AirSeries, from: Minute): Partial<Readonly<Record<Mark, MarkTimes>>> {
  return markTimes(material, { material: material.id, thickness: 1 }, air, from);
}

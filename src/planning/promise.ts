import type { Book } from '../model/book.ts';
import type { Piece } from '../model/piece.ts';
import type { Plan, PlannedPiece, ReadyTime } from '../model/plan.ts';
import type { Minute } from '../time/span.ts';
import { makePlan } from './make-plan.ts';
import { situationOf } from './situation-of.ts';

/** A piece that is later than it would be without the new one, past its wanted-by date. */
export interface Delayed {
  readonly id: string;
  readonly name: string;
  readonly wantedBy: Minute;
  /** How late it then is, and how late it is anyway. */
  readonly lateHours: number;
  readonly lateHoursAnyway: number;
}

export interface Offer {
  readonly ready: ReadyTime;
  readonly delayed: readonly Delayed[];
}

export interface Answer {
  readonly by: Minute;
  /** The date can be promised: it holds with the shop's chance, and no other piece gets late for it. */
  readonly kept: boolean;
  /** The soonest that was found without making another piece late; absent where there is no plan at all. */
  readonly offer?: Offer;
  /** Where that is too late: what it takes to have the piece by the date, or as soon after as can be. */
  readonly sooner?: Offer;
}

export interface PromiseOptions {
  readonly seed: number;
  readonly steps?: number;
  /** Asked now and then; true ends a search early. */
  readonly stop?: () => boolean;
  readonly onBetter?: () => void;
}

/** Half an hour is within what a plan that is searched for a little longer gains or loses. */
const LEAST_HOURS = 0.5;
/** In minor units: makes a minute of the new piece dear, but far less dear than a minute past another's date. */
const EAGER_COST_MINOR = 100_000;
const MODEST_COST_MINOR = 0;
/** Without a price it is dearer than any other piece is late; with one it is weighed by it. */
const URGENT_PRICE_MINOR = 100_000_000;

function delayedBy(before: Plan, after: Plan, newcomer: string): Delayed[] {
  const anyway = new Map(before.pieces.map((p) => [p.id, p.lateHours]));
  return after.pieces.flatMap(({ id, name, wantedBy, lateHours }: PlannedPiece): Delayed[] => {
    const lateHoursAnyway = anyway.get(id) ?? 0;
    if (id === newcomer || wantedBy === undefined || lateHours < lateHoursAnyway + LEAST_HOURS) return [];
    return [{ id, name, wantedBy, lateHours, lateHoursAnyway }];
  });
}

function offerFor(book: Book, now: Minute, kept: Plan, piece: Piece, options: PromiseOptions): Offer | undefined {
  const made = makePlan(
    situationOf({ ...book, pieces: [...book.pieces, piece].sort((a, b) => (a.id < b.id ? -1 : 1)) }, now),
    // Others may move as they like, as long as they keep their dates.
    { ...options, kept, anew: true },
  );
  if (made.kind !== 'plan') return undefined;
  const ready = made.plan.pieces.find((p) => p.id === piece.id)?.ready.handedOver;
  return ready && { ready, delayed: delayedBy(kept, made.plan, piece.id) };
}

/**
 * Can the shop take on `piece`, which names no date of its own, and hand it over by `by`? Asked in turn: eagerly, but so that others keep their dates; where
 * that still delays another, modestly; and where the date is then missed, at the cost of the others. A search, not a
 * proof: a date that is refused might be found by a longer one. Cut short, it ends with what was found for the question before.
 */
export function promiseOf(
  book: Book,
  now: Minute,
  kept: Plan,
  piece: Piece,
  by: Minute,
  options: PromiseOptions,
): Answer {
  const eager = offerFor(book, now, kept, { ...piece, priceMinor: 0, costMinor: EAGER_COST_MINOR }, options);
  const isCut = () => options.stop?.() === true;
  const modest =
    eager?.delayed.length === 0 || isCut()
      ? eager
      : offerFor(book, now, kept, { ...piece, priceMinor: 0, costMinor: MODEST_COST_MINOR }, options);
  const offer = modest ?? eager;
  const isKept = offer?.delayed.length === 0 && offer.ready.safe <= by;
  if (isKept) return { by, kept: true, offer };
  if (isCut()) return { by, kept: false, ...(offer && { offer }) };
  const urgent = {
    ...piece,
    wantedBy: by,
    priceMinor: piece.priceMinor > 0 ? piece.priceMinor : URGENT_PRICE_MINOR,
    costMinor: EAGER_COST_MINOR,
  };
  const sooner = offerFor(book, now, kept, urgent, options);
  const helps = sooner !== undefined && sooner.ready.safe < (offer?.ready.safe ?? Infinity);
  return { by, kept: false, ...(offer && { offer }), ...(helps && { sooner }) };
}

import { staysAway } from '../model/away.ts';
import type { Book } from '../model/book.ts';
import { openSpans } from '../model/hours.ts';
import type { Plan, PlannedPiece } from '../model/plan.ts';
import type { Appointment } from '../model/shop.ts';
import { covers, type Minute, type Span } from '../time/span.ts';
import { localTime } from '../time/zone.ts';
import type { Names } from './names.ts';
import { sayClocks, type Manner } from './say-time.ts';
import { worded } from '../words/worded.ts';

/** What is fixed by the calendar, not by the plan. */
export type Dated =
  | { readonly kind: 'appointment'; readonly span: Span; readonly appointment: Appointment }
  | {
      readonly kind: 'away';
      readonly span: Span;
      readonly piece: string;
      readonly section?: string;
      readonly at: string;
    }
  | { readonly kind: 'off'; readonly span: Span; readonly hand: string }
  | { readonly kind: 'open'; readonly span: Span; readonly room: string };

/** All that is fixed and touches `within`: appointments by their time, then stays away, days off, hours of hired rooms. */
export function datedIn(within: Span, { shop, pieces }: Book): Dated[] {
  const all: Dated[] = [
    ...[...(shop.appointments ?? [])]
      .sort((a, b) => a.start - b.start)
      .map((appointment): Dated => ({ kind: 'appointment', span: appointment, appointment })),
    ...pieces.flatMap((piece) =>
      staysAway(piece).map(({ section, away }): Dated => ({
        kind: 'away',
        span: away,
        piece: piece.id,
        ...(section !== undefined && { section }),
        at: away.at,
      })),
    ),
    ...shop.hands.flatMap((hand) => (hand.off ?? []).map((span): Dated => ({ kind: 'off', span, hand: hand.id }))),
    ...shop.rooms.flatMap((room) =>
      room.open === undefined
        ? []
        : openSpans(room.open, shop.timeZone, within.start, within.end).map((span): Dated => ({
            kind: 'open',
            span,
            room: room.id,
          })),
    ),
  ];
  return all.filter(({ span }) => span.start < within.end && span.end > within.start);
}

/** How moments are said: in full, or seen from a day. */
export type SayWhen = (minute: Minute) => string;

/** `Wed 20 Jan 12:00`; of an end at midnight the day that ends. */
export function sayEnd(end: Minute, manner: Manner, when: SayWhen, day: SayWhen): string {
  return localTime(end, manner.zone).clock === 0 ? day(end - 1) : when(end);
}

/** `13:00–17:30`, or `all day`. */
export function sayPart(span: Span, day: Span, manner: Manner): string {
  if (covers([span], day)) return worded`all day`;
  return sayClocks({ start: Math.max(span.start, day.start), end: Math.min(span.end, day.end) }, manner);
}

/** Pieces that are to leave with the appointment and are not ready by then, each with when it is. */
function notReady({ takes, start }: Appointment, { pieces }: Plan): PlannedPiece[] {
  return pieces.filter((p) => takes.includes(p.id) && (p.ready.handedOver?.safe ?? Infinity) > start);
}

/** `takes Pine washstand` */
export function sayLoad({ brings, takes }: Appointment, names: Names): string[] {
  return [
    ...(brings.length === 0 ? [] : [worded`brings ${brings.map(names.piece).join(', ')}`]),
    ...(takes.length === 0 ? [] : [worded`takes ${takes.map(names.piece).join(', ')}`]),
  ];
}

/** `Pine washstand is not ready by then, but Tue 19 Jan 10:00` */
export function sayLate(appointment: Appointment, plan: Plan, names: Names, when: SayWhen): string[] {
  return notReady(appointment, plan).map(({ id, ready }) => {
    const safe = ready.handedOver?.safe;
    return worded`${names.piece(id)} is not ready by then${safe === undefined ? '' : worded`, but ${when(safe)}`}`;
  });
}

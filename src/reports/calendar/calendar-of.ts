import type { Minute } from '../../time/span.ts';
import { eventKinds, type CalendarEvent, type EventKind } from './event.ts';
import type { CalendarSource } from './about-step.ts';
import { eventsOfPlan } from './events-of-plan.ts';
import { isNews, updateLedger, type Ledger, type LedgerEntry } from './ledger.ts';
import { icalendar, type ToldEvent } from './write.ts';

/** Which events a calendar is to hold; an absent list means all. */
export interface Choice {
  readonly kinds?: readonly EventKind[];
  readonly pieces?: readonly string[];
  /** Events that are nobody's own, such as a hand-over, are everyone's. */
  readonly hands?: readonly string[];
}

export interface CalendarRequest extends Omit<CalendarSource, 'shopId'> {
  readonly ledger: Ledger;
  readonly now: Minute;
  readonly choice: Choice;
  /** A `feed` is fetched again and again and leaves out what went away; a `file` is imported once and must say so. */
  readonly form: 'feed' | 'file';
}

export interface Calendar {
  readonly text: string;
  readonly eventCount: number;
  /** To be kept for the next time; the same object where nothing changed. */
  readonly ledger: Ledger;
}

type Chosen = Pick<CalendarEvent, 'kind' | 'piece' | 'hands'>;

const kindAndPiece = (event: Chosen, { kinds = eventKinds, pieces }: Choice) =>
  kinds.includes(event.kind) && (pieces === undefined || pieces.includes(event.piece));

const hasHand = ({ hands }: Chosen, choice: Choice) =>
  choice.hands === undefined || hands.length === 0 || hands.some((hand) => choice.hands?.includes(hand));

function told(event: CalendarEvent, entry: LedgerEntry, calledOff: boolean): ToldEvent {
  return { ...event, ...entry, calledOff };
}

/** Is `entry` news of an event that this choice used to hold, and now no longer does? */
function wentAway(entry: LedgerEntry, choice: Choice, now: Minute): boolean {
  if (!kindAndPiece(entry.told, choice)) return false;
  if (hasHand(entry.told, choice)) return isNews(entry.goneSince, now);
  return (choice.hands ?? []).some((hand) => isNews(entry.left?.[hand], now));
}

function calledOff(ledger: Ledger, choice: Choice, now: Minute): ToldEvent[] {
  return Object.entries(ledger.events)
    .filter(([, entry]) => wentAway(entry, choice, now))
    .map(([uid, entry]) => told({ ...entry.told, uid, description: '', alarms: [] }, entry, true));
}

/** The calendar of a plan, and the ledger after it: the same input always gives the same bytes. */
export function calendarOf(request: CalendarRequest): Calendar {
  const { choice, now, form, book } = request;
  const all = eventsOfPlan({ ...request, shopId: request.ledger.shop });
  const ledger = updateLedger(request.ledger, all, now);
  const current = all
    .filter((event) => kindAndPiece(event, choice) && hasHand(event, choice))
    .flatMap((event) => {
      const entry = ledger.events[event.uid];
      return entry === undefined ? [] : [told(event, entry, false)];
    });
  const events = form === 'feed' ? current : [...current, ...calledOff(ledger, choice, now)];
  const refresh = form === 'feed' ? { refreshMinutes: 60 } : {};
  return { text: icalendar({ name: book.shop.name, events, ...refresh }), eventCount: current.length, ledger };
}

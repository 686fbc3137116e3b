import { datedIn, sayEnd, sayLate, sayLoad, type Dated } from '../dated.ts';
import type { CalendarDesk } from './about-step.ts';
import type { CalendarEvent } from './event.ts';
import { dayText, momentText } from './moment.ts';
import { derivedUuid } from './uid.ts';
import { worded } from '../../words/worded.ts';

function appointmentEvent(desk: CalendarDesk, dated: Extract<Dated, { kind: 'appointment' }>): CalendarEvent {
  const { names, plan, manner } = desk;
  const { what, hands, brings, takes, start, end } = dated.appointment;
  return {
    uid: derivedUuid([desk.shopId, 'appointment', what, String(start)]),
    kind: 'appointment',
    piece: [...takes, ...brings][0] ?? '',
    hands,
    done: end <= plan.from,
    start,
    end,
    summary: [what, ...sayLoad(dated.appointment, names)].join(', '),
    description: [
      worded`Who: ${hands.map(names.hand).join(', ')}`,
      ...sayLate(dated.appointment, plan, names, (t) => momentText(t, manner)).map((late) => `${late}.`),
    ].join('\n'),
    alarms: [],
  };
}

function awayEvent(desk: CalendarDesk, dated: Extract<Dated, { kind: 'away' }>): CalendarEvent {
  const { names, manner } = desk;
  const { piece, section, at, span } = dated;
  const back = sayEnd(
    span.end,
    manner,
    (t) => momentText(t, manner),
    (t) => dayText(t, manner),
  );
  return {
    uid: derivedUuid([desk.shopId, piece, section ?? '', 'away', String(span.start)]),
    kind: 'away',
    piece,
    hands: [],
    done: span.end <= desk.plan.from,
    ...span,
    summary: worded`Away at ${at} – ${names.piece(piece)}${section === undefined ? '' : `, ${names.section(piece, section)}`}`,
    description: worded`Promised back ${back}.`,
    alarms: [],
  };
}

function offEvent(
  { shopId, names, plan }: CalendarDesk,
  { hand, span }: Extract<Dated, { kind: 'off' }>,
): CalendarEvent {
  return {
    uid: derivedUuid([shopId, 'off', hand, String(span.start)]),
    kind: 'off',
    piece: '',
    hands: [hand],
    done: span.end <= plan.from,
    ...span,
    summary: worded`Off – ${names.hand(hand)}`,
    description: '',
    alarms: [],
  };
}

const ALL_TIME = { start: -Infinity, end: Infinity };

/** Appointments, stays away and days off; those that are over are facts. */
export function datedEvents(desk: CalendarDesk): CalendarEvent[] {
  return datedIn(ALL_TIME, { ...desk.book, shop: { ...desk.book.shop, rooms: [] } }).flatMap((dated) => {
    if (dated.kind === 'appointment') return [appointmentEvent(desk, dated)];
    if (dated.kind === 'off') return [offEvent(desk, dated)];
    return dated.kind === 'away' ? [awayEvent(desk, dated)] : [];
  });
}

// RFC 5545 is written by hand here: one-shot events in UTC need six kinds of property and about a hundred lines. Of the
// libraries tried, each either wrote the machine's own wall clock under another zone, left names unescaped, or stamped
// the time of export into every event; the tests read the result back with two of them.
import type { Minute } from '../../time/span.ts';
import type { Alarm, CalendarEvent } from './event.ts';
import { escaped, folded } from './text.ts';

/** An event with what calendars need to tell an old version from a new one. */
export interface ToldEvent extends Omit<CalendarEvent, 'piece' | 'hands' | 'done'> {
  readonly sequence: number;
  readonly firstSeen: Minute;
  readonly lastChanged: Minute;
  readonly calledOff: boolean;
}

export interface CalendarFile {
  readonly name: string;
  readonly events: readonly ToldEvent[];
  /** For a subscription: how often to look again. */
  readonly refreshMinutes?: number;
}

/** `20270311T073000Z` */
function instant(minute: Minute): string {
  return new Date(minute * 60_000).toISOString().replace(/[-:]|\.\d+/gu, '');
}

const day = (date: string) => date.replaceAll('-', '');

/** The day after: the end of an all-day event does not belong to it. */
function dayAfter(date: string): string {
  const [year = 0, month = 1, dayOfMonth = 1] = date.split('-').map(Number);
  return new Date(Date.UTC(year, month - 1, dayOfMonth + 1)).toISOString().slice(0, 10);
}

/** `PT3H30M`, and zero as `PT0S`: a bare `P` is not a duration. */
function duration(minutes: number): string {
  if (minutes === 0) return 'PT0S';
  const hours = Math.floor(minutes / 60);
  return `PT${hours > 0 ? `${hours}H` : ''}${minutes % 60 > 0 ? `${minutes % 60}M` : ''}`;
}

function times(event: ToldEvent): string[] {
  if (event.date === undefined) return [`DTSTART:${instant(event.start)}`, `DTEND:${instant(event.end)}`];
  return [`DTSTART;VALUE=DATE:${day(event.date)}`, `DTEND;VALUE=DATE:${day(dayAfter(event.date))}`];
}

// The trigger counts from the start: fewer programs read one that counts from the end.
function alarmLines(alarm: Alarm, start: Minute): string[] {
  return [
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    `TRIGGER:${duration(alarm.minute - start)}`,
    `DESCRIPTION:${escaped(alarm.text)}`,
    'END:VALARM',
  ];
}

function eventLines(event: ToldEvent): string[] {
  return [
    'BEGIN:VEVENT',
    `UID:${event.uid}`,
    `DTSTAMP:${instant(event.lastChanged)}`,
    `CREATED:${instant(event.firstSeen)}`,
    `LAST-MODIFIED:${instant(event.lastChanged)}`,
    `SEQUENCE:${event.sequence}`,
    ...times(event),
    `SUMMARY:${escaped(event.summary)}`,
    ...(event.description === '' ? [] : [`DESCRIPTION:${escaped(event.description)}`]),
    `CATEGORIES:${escaped(event.kind)}`,
    `STATUS:${event.calledOff ? 'CANCELLED' : 'CONFIRMED'}`,
    `TRANSP:${event.kind === 'work' || event.kind === 'appointment' ? 'OPAQUE' : 'TRANSPARENT'}`,
    ...(event.calledOff ? [] : event.alarms.flatMap((alarm) => alarmLines(alarm, event.start))),
    'END:VEVENT',
  ];
}

/** The bytes of an iCalendar object as text: the same events always give the same text. */
export function icalendar(file: CalendarFile): string {
  const name = escaped(file.name).replaceAll('\\n', ' ');
  const refresh = file.refreshMinutes === undefined ? undefined : duration(file.refreshMinutes);
  return [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Drybench//Drybench//EN',
    'CALSCALE:GREGORIAN',
    `NAME:${name}`,
    `X-WR-CALNAME:${name}`,
    ...(refresh === undefined ? [] : [`REFRESH-INTERVAL;VALUE=DURATION:${refresh}`, `X-PUBLISHED-TTL:${refresh}`]),
    ...file.events.flatMap(eventLines),
    'END:VCALENDAR',
  ]
    .map(folded)
    .join('');
}

import type { Minute } from '../../time/span.ts';

/** What an event is about. */
export const eventKinds = ['work', 'drying', 'window', 'ready', 'appointment', 'away', 'off'] as const;
export type EventKind = (typeof eventKinds)[number];

export interface Alarm {
  /** Not before the event's start, not after its end. */
  readonly minute: Minute;
  readonly text: string;
}

/** One entry of a calendar, as the plan alone makes it. */
export interface CalendarEvent {
  /** Stays with the step through every new plan. */
  readonly uid: string;
  readonly kind: EventKind;
  readonly piece: string;
  /** Ids of those whose work it is; empty: everyone's. */
  readonly hands: readonly string[];
  readonly start: Minute;
  readonly end: Minute;
  /** A whole day of the shop (`2027-01-16`), instead of the clock times. */
  readonly date?: string;
  readonly summary: string;
  readonly description: string;
  readonly alarms: readonly Alarm[];
  /** A fact, not a plan: it is not called off when it leaves the plan. */
  readonly done: boolean;
}

import type { Book } from '../../model/book.ts';
import { freeSpans, openSpans } from '../../model/hours.ts';
import type { Plan, PlannedStep, PlannedWindow } from '../../model/plan.ts';
import { intersect, unite, type Minute, type Span, type Spans } from '../../time/span.ts';
import type { Alarm, CalendarEvent } from './event.ts';
import { aboutStep, ofSection, stepLines, type CalendarDesk } from './about-step.ts';
import { momentFrom, momentText } from './moment.ts';
import { preparationSaid } from '../say-mark.ts';
import { translated, worded } from '../../words/worded.ts';

/** How far ahead to look for the next working minute after a window opens that never shuts. */
const LOOK_AHEAD = 14 * 24 * 60;

/** Length of the event of a window that never shuts, once someone can act on it. */
const OPEN_END_MINUTES = 15;

/** Rings when it opens and before it shuts; while nobody works, at the next, or before the last, minute of work. */
function alarmsOf(span: Span, hours: Spans, warnMinutes: number, what: string, shutsText: string | undefined): Alarm[] {
  const first = hours[0]?.start ?? span.start;
  const opening = { minute: first, text: worded`Now: ${what}` };
  const lastCall = (hours.at(-1)?.end ?? span.end) - warnMinutes;
  if (shutsText === undefined || lastCall <= first) return [opening];
  return [opening, { minute: lastCall, text: worded`Window shuts ${shutsText}: ${what}` }];
}

/** The window that a step was put into, as long as the step is not begun. */
function windowAhead(step: PlannedStep): PlannedWindow | undefined {
  return step.done === true || step.atWork === true ? undefined : step.window;
}

/** When those who do a step work, over all windows of a plan. */
export type WorkHours = (step: PlannedStep) => Spans;

/** Worked out once for all windows: the wall clock of a zone is slow to ask. */
export function workHoursOf(plan: Plan, book: Book): WorkHours {
  const windows = plan.steps.flatMap((step) => windowAhead(step) ?? []);
  const from = Math.min(...windows.map((w) => w.opens));
  const to = Math.max(...windows.map((w) => w.shuts ?? w.opens + LOOK_AHEAD));
  if (to <= from) return () => [];
  const { opening, timeZone, hands } = book.shop;
  const open = openSpans(opening, timeZone, from, to);
  const theirs = new Map(hands.map((hand) => [hand.id, freeSpans(book.shop, hand, from, to)]));
  return (step) => {
    const doers = step.hands.flatMap((hand) => theirs.get(hand) ?? []);
    return doers.length > 0 ? intersect(open, unite(doers)) : open;
  };
}

/** The window that a step was put into, while the step is still to do: an event to act in, with its alarms. */
export function windowEvent(desk: CalendarDesk, step: PlannedStep, workHours: WorkHours): CalendarEvent[] {
  const window = windowAhead(step);
  if (window === undefined) return [];
  const { manner, warnMinutes } = desk;
  const { opens, shuts, prep } = window;
  const ahead: Span = { start: opens, end: shuts ?? opens + LOOK_AHEAD };
  if (ahead.end <= ahead.start) return [];
  const hours = intersect(workHours(step), [ahead]);
  const end: Minute = shuts ?? (hours[0]?.start ?? opens) + OPEN_END_MINUTES;
  const what = `${step.title} – ${ofSection(desk, step)}`;
  const shutsText = shuts === undefined ? undefined : momentFrom(opens, shuts, manner);
  return [
    {
      ...aboutStep(desk, step, 'window'),
      start: opens,
      end,
      summary:
        shutsText === undefined
          ? worded`From ${momentFrom(opens, opens, manner)}: ${what}`
          : worded`By ${shutsText}: ${what}`,
      description: [
        worded`Window opens ${momentText(opens, manner)}${shuts === undefined ? '' : worded`, shuts ${momentText(shuts, manner)}`}.`,
        ...(prep === undefined ? [] : [worded`Preparation: ${translated(preparationSaid[prep])}.`]),
        ...stepLines(desk, step),
      ].join('\n'),
      alarms: alarmsOf({ start: opens, end }, hours, warnMinutes, what, shutsText),
    },
  ];
}

import type { PlannedPiece, PlannedStep, ReadyTime } from '../../model/plan.ts';
import { localDay } from '../../time/zone.ts';
import { datedEvents } from './dated-events.ts';
import { dryingSpan, workEnd } from './drying-span.ts';
import { aboutStep, ofSection, stepLines, type CalendarDesk, type CalendarSource } from './about-step.ts';
import type { CalendarEvent } from './event.ts';
import { deadlineText, keptManner, momentFrom, momentText } from './moment.ts';
import { namesOf } from '../names.ts';
import { sayChance } from '../say-quantity.ts';
import { sayLength } from '../say-time.ts';
import { derivedUuid } from './uid.ts';
import { windowEvent, workHoursOf } from './window-event.ts';
import { phrase, worded } from '../../words/worded.ts';

function workEvents(desk: CalendarDesk, step: PlannedStep): CalendarEvent[] {
  const { manner } = desk;
  const window = step.window?.shuts;
  const parts = step.spans.length;
  return step.spans.map((span, part) => ({
    ...aboutStep(desk, step, 'work', part),
    start: span.start,
    end: span.end,
    summary: `${step.title}${parts > 1 ? worded` (${part + 1} of ${parts})` : ''} – ${ofSection(desk, step)}`,
    description: [
      ...stepLines(desk, step),
      ...(window === undefined || step.done === true
        ? []
        : [worded`Begin before ${momentFrom(span.start, window, manner)}: then the window shuts.`]),
    ].join('\n'),
    alarms: [],
  }));
}

function dryingEvents(desk: CalendarDesk, step: PlannedStep): CalendarEvent[] {
  const span = dryingSpan(desk.plan, step);
  if (span === undefined) return [];
  const { manner } = desk;
  const what = step.material === undefined ? step.title : desk.names.material(step.material);
  return [
    {
      ...aboutStep(desk, step, 'drying'),
      ...span,
      summary: worded`Drying until ${momentFrom(span.start, span.end, manner)} – ${ofSection(desk, step)}: ${what}`,
      description: worded`${ofSection(desk, step)}\nOn since ${momentText(workEnd(step), manner)}, ${sayLength(span.end - span.start)} until the next step may follow.`,
      alarms: [],
    },
  ];
}

const readyTitles = {
  listed: phrase('Ready to photograph and list'),
  handedOver: phrase('Ready to hand over'),
  cure: phrase('Fully cured'),
} as const;

function readyEvent(desk: CalendarDesk, piece: PlannedPiece, mark: keyof typeof readyTitles, ready: ReadyTime) {
  const { names, manner, shopId } = desk;
  const day = localDay(ready.safe, manner.zone);
  const wanted = piece.wantedBy === undefined ? [] : [worded`Wanted by ${deadlineText(piece.wantedBy, manner)}.`];
  const late = piece.lateHours > 0 ? [worded`${sayLength(piece.lateHours * 60)} late.`] : [];
  return {
    uid: derivedUuid([shopId, piece.id, 'ready', mark]),
    kind: 'ready' as const,
    piece: piece.id,
    hands: [],
    done: false,
    start: day.start,
    end: day.end,
    date: day.date,
    summary: `${readyTitles[mark]}: ${names.piece(piece.id)}`,
    description: [
      worded`Holds with ${sayChance(ready.chance)} chance; as things usually go: ${momentText(ready.typical, manner)}.`,
      ...wanted,
      ...late,
    ].join('\n'),
    alarms: [],
  };
}

function readyEvents(desk: CalendarDesk, piece: PlannedPiece): CalendarEvent[] {
  return (['listed', 'handedOver', 'cure'] as const).flatMap((mark) => {
    const ready = piece.ready[mark];
    return ready === undefined ? [] : [readyEvent(desk, piece, mark, ready)];
  });
}

/** Everything that a plan has to tell a calendar, in order of time. */
export function eventsOfPlan(source: CalendarSource): CalendarEvent[] {
  const { plan, book } = source;
  const desk: CalendarDesk = { ...source, names: namesOf(book), manner: keptManner(book.shop) };
  const workHours = workHoursOf(plan, book);
  const events = [
    ...plan.steps.flatMap((step) => [
      ...workEvents(desk, step),
      ...dryingEvents(desk, step),
      ...windowEvent(desk, step, workHours),
    ]),
    ...datedEvents(desk),
    ...plan.pieces.flatMap((piece) => readyEvents(desk, piece)),
  ];
  return events.sort((a, b) => a.start - b.start || a.end - b.end || (a.uid < b.uid ? -1 : 1));
}

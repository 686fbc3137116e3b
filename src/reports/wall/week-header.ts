import { dayText, momentFrom, momentText } from '../calendar/moment.ts';
import { grouped } from '../grouped.ts';
import { shortened } from './measure.ts';
import { line, named, rect, text, textured, type Markup } from './svg.ts';
import type { Drawing } from './wall-input.ts';
import { hourTicks, type Axis } from './week-axis.ts';
import { worded } from '../../words/worded.ts';

export const headerLook = { title: 6, days: 12.5, hours: 16, strips: 17.5, strip: 3.2 } as const;

/** Rooms with hours not fit for coating in these days. */
function unfitRooms({ unfit }: Drawing, axis: Axis) {
  const here = unfit.filter((u) => u.span.start < axis.to && u.span.end > axis.from);
  return [...grouped(here, (u) => u.room)];
}

/** Foot of the header, in mm: below it the rows begin. */
export function headerFoot(drawing: Drawing, axis: Axis): number {
  const rooms = unfitRooms(drawing, axis).length;
  return headerLook.strips + rooms * headerLook.strip + (rooms > 0 ? 1 : 0);
}

function dayHeads({ manner }: Drawing, axis: Axis, foot: number): Markup {
  return axis.days
    .map((day) => {
      const [left, right] = [axis.x(day.start), axis.x(day.end)];
      const long = dayText(day.start, manner);
      const size = 3.2;
      const label = [long, long.replace(/ \S+$/, ''), long.slice(0, 2)].find(
        (t) => shortened(t, right - left - 0.6, { size, bold: true }) === t,
      );
      const head =
        label === undefined
          ? ''
          : text((left + right) / 2, headerLook.days, label, { size, bold: true, anchor: 'middle', tone: 'strong' });
      return head + line(left, headerLook.days - 3.5, left, foot, 'day');
    })
    .join('');
}

function hourMarks({ book, manner }: Drawing, axis: Axis, foot: number): Markup {
  return hourTicks(axis, manner.zone, book.shop.clock, 5.5)
    .map(({ minute, label }) => {
      const x = axis.x(minute);
      return (
        text(x, headerLook.hours, label, { size: 2.2, anchor: 'middle', tone: 'quiet' }) +
        line(x, headerLook.hours + 0.6, x, foot, 'rule')
      );
    })
    .join('');
}

function unfitStrips(drawing: Drawing, axis: Axis, left: number): Markup {
  const { names, manner } = drawing;
  return unfitRooms(drawing, axis)
    .map(([room, hours], i) => {
      const y = headerLook.strips + i * headerLook.strip;
      const label = shortened(worded`${names.room(room)}: no coating`, left - 2, { size: 2.3 });
      const shapes = hours.map(({ span, why }) => {
        const [from, to] = [axis.x(span.start), axis.x(span.end)];
        const name = worded`${names.room(room)} not fit for coating ${momentText(span.start, manner)} to ${momentFrom(span.start, span.end, manner)}: ${why}`;
        return named(name, textured(from, y, to - from, headerLook.strip - 0.7, 'unfit'));
      });
      return text(0, y + 2.1, label, { size: 2.3, tone: 'quiet' }) + shapes.join('');
    })
    .join('');
}

/** Closed hours as a ground, days, hours, and the hours not fit for coating, down to `foot`. */
export function weekHeader(drawing: Drawing, axis: Axis, left: number, foot: number): Markup {
  const ground = axis.closed.map(({ start, end }) =>
    rect(axis.x(start), headerLook.hours + 0.6, axis.x(end) - axis.x(start), foot - headerLook.hours - 0.6, 'closed'),
  );
  return (
    ground.join('') + hourMarks(drawing, axis, foot) + dayHeads(drawing, axis, foot) + unfitStrips(drawing, axis, left)
  );
}

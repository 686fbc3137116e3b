import type { PlannedStep } from '../../model/plan.ts';
import { sayStep } from '../bench.ts';
import { momentFrom, momentText } from '../calendar/moment.ts';
import { element, named, rect, text, textured, type Markup, type Textured } from './svg.ts';
import { rowLabels } from './row-labels.ts';
import type { Drawing } from './wall-input.ts';
import type { Axis } from './week-axis.ts';
import type { NumberedWork, WeekRow, WindowBand } from './week-model.ts';
import { worded } from '../../words/worded.ts';

/** Heights inside a row, in mm: numbers above, the bar below. */
export const rowLook = { label: 2.3, labelFoot: 2.4, bar: 3 } as const;

const THINNEST = 0.7;

function whose({ names }: Drawing, step: PlannedStep): string {
  const section = names.section(step.piece, step.section);
  return `${names.piece(step.piece)}${section === '' ? '' : `, ${section}`}`;
}

/** `Mon 11 Jan 08:30 to 09:10` */
export function spanText({ manner }: Drawing, start: number, end: number): string {
  return worded`${momentText(start, manner)} to ${momentFrom(start, end, manner)}`;
}

function bar(axis: Axis, start: number, end: number, y: number, kind: 'work' | 'done' | Textured): Markup {
  const left = axis.x(start);
  const wide = Math.max(THINNEST, axis.x(end) - left);
  if (kind === 'work' || kind === 'done') return rect(left, y, wide, rowLook.bar, kind);
  return textured(left, y, wide, rowLook.bar, kind);
}

function workShape(drawing: Drawing, axis: Axis, work: NumberedWork, y: number): Markup {
  const { step, span } = work;
  const isDone = step.done === true;
  const name = `${work.number}, ${whose(drawing, step)}: ${sayStep(step)}, ${spanText(drawing, span.start, span.end)}${isDone ? worded`, done` : ''}`;
  return named(name, bar(axis, span.start, span.end, y, isDone ? 'done' : 'work'));
}

function windowShape(drawing: Drawing, axis: Axis, band: WindowBand, y: number): Markup {
  const { step, span, shuts } = band;
  const till = shuts === undefined ? worded`, and stays open` : worded`, shuts ${momentText(shuts, drawing.manner)}`;
  const name = worded`${whose(drawing, step)}: window for ${sayStep(step)} opens ${momentText(span.start, drawing.manner)}${till}`;
  return named(name, bar(axis, span.start, span.end, y, 'window'));
}

/** A wedge that points at the minute at which a window shuts. */
function shutMark(drawing: Drawing, axis: Axis, band: WindowBand, y: number): Markup {
  const { shuts } = band;
  if (shuts === undefined || shuts <= axis.from || shuts >= axis.to) return '';
  const x = axis.x(shuts);
  const path = `M${x.toFixed(2)} ${(y + rowLook.bar).toFixed(2)}v${-rowLook.bar}h-1.3z`;
  return named(
    worded`${whose(drawing, band.step)}: window shuts ${momentText(shuts, drawing.manner)}`,
    element('path', { d: path, class: 'shut' }),
  );
}

/** All that happens to one section, in one row whose top is `y`. */
export function rowShapes(drawing: Drawing, axis: Axis, row: WeekRow, y: number, right: number): Markup {
  const barY = y + rowLook.labelFoot + 0.5;
  const type = { size: rowLook.label };
  const dryings = row.dryings.map(({ step, span }) =>
    named(
      worded`${whose(drawing, step)}: drying, ${spanText(drawing, span.start, span.end)}`,
      bar(axis, span.start, span.end, barY, 'drying'),
    ),
  );
  const labels = rowLabels(row.works, (w) => axis.x(w.span.start), right, type);
  return [
    ...row.windows.map((w) => windowShape(drawing, axis, w, barY)),
    ...dryings,
    ...row.windows.map((w) => shutMark(drawing, axis, w, barY)),
    ...row.works.map((w) => workShape(drawing, axis, w, barY)),
    ...labels.map((label) => text(label.x, y + rowLook.labelFoot, label.text, { ...type, tone: 'halo' })),
  ].join('');
}

/** A diamond where a piece is ready to hand over. */
export function readyShape(x: number, y: number, name: string): Markup {
  const half = rowLook.bar / 2;
  const path = `M${x.toFixed(2)} ${y.toFixed(2)}l${half} ${half}l${-half} ${half}l${-half} ${-half}z`;
  return named(name, element('path', { d: path, class: 'ready' }));
}

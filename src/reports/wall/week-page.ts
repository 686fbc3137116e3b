import type { PlannedPiece } from '../../model/plan.ts';
import { dayText, momentText } from '../calendar/moment.ts';
import { handOver } from '../ready-dates.ts';
import { sayChance } from '../say-quantity.ts';
import { sayLength } from '../say-time.ts';
import { legend } from './legend.ts';
import { shortened, wrappedWithin } from './measure.ts';
import { sheets, type Page } from './paper.ts';
import { line, text, textLines, type Markup } from './svg.ts';
import type { Drawing } from './wall-input.ts';
import type { Axis } from './week-axis.ts';
import { headerFoot, headerLook, weekHeader } from './week-header.ts';
import type { PieceRows, WeekModel } from './week-model.ts';
import { readyShape, rowLook, rowShapes } from './week-shapes.ts';
import { worded } from '../../words/worded.ts';

const { width, height } = sheets.landscape;
const LEGEND_HEIGHT = 9;
const NOTE_LEAD = 3;

/** Left edge of the time axis: before it stand the names. */
export const NAMES_WIDTH = 60;
const SECTION_X = 40;

const rowHeights = { least: 6.6, most: 12 } as const;
/** A piece has room for its name and its date, whatever its rows. */
const LEAST_PIECE = 8.4;

export interface WeekSheet {
  readonly pieces: readonly PieceRows[];
  readonly notes: readonly string[];
  readonly number: number;
  readonly of: number;
}

function pieceHeight({ rows }: PieceRows, rowHeight: number): number {
  return Math.max(LEAST_PIECE, rows.length * rowHeight);
}

/** Rows as tall as the sheet allows, within bounds. */
export function rowHeightFor(pieces: readonly PieceRows[], room: number): number {
  for (let rowHeight: number = rowHeights.most; rowHeight > rowHeights.least; rowHeight -= 0.2)
    if (pieces.reduce((sum, p) => sum + pieceHeight(p, rowHeight), 0) <= room) return rowHeight;
  return rowHeights.least;
}

/** Height for the rows of one sheet, beside header, legend and notes. */
export function roomForRows(drawing: Drawing, axis: Axis, noteLines: number): number {
  return height - headerFoot(drawing, axis) - LEGEND_HEIGHT - noteLines * NOTE_LEAD - 2;
}

/** Pieces onto sheets, each whole on one where it fits; a piece with more rows than a sheet holds goes on on the next. */
export function spread(pieces: readonly PieceRows[], room: number): PieceRows[][] {
  const mostRows = Math.max(1, Math.floor(room / rowHeights.least));
  const parts = pieces.flatMap((p) =>
    Array.from({ length: Math.ceil(p.rows.length / mostRows) }, (_, i) => ({
      piece: p.piece,
      rows: p.rows.slice(i * mostRows, (i + 1) * mostRows),
    })),
  );
  const sheetsOfPieces: PieceRows[][] = [[]];
  let used = 0;
  for (const part of parts) {
    const own = pieceHeight(part, rowHeights.least);
    if (used + own > room && used > 0) {
      sheetsOfPieces.push([]);
      used = 0;
    }
    sheetsOfPieces.at(-1)?.push(part);
    used += own;
  }
  return sheetsOfPieces;
}

function readyLine(piece: PlannedPiece, drawing: Drawing): string {
  const ready = handOver(piece);
  if (ready === undefined) return '';
  const late = piece.lateHours > 0 ? worded`, ${sayLength(piece.lateHours * 60)} late` : '';
  return worded`ready ${dayText(ready.safe, drawing.manner)}${late}`;
}

function pieceLabel({ piece, rows }: PieceRows, y: number, tall: number, drawing: Drawing): Markup {
  const name = { size: 2.9, bold: true } as const;
  const lead = 3.3;
  const lines = wrappedWithin(
    drawing.names.piece(piece.id),
    SECTION_X - 2,
    name,
    Math.max(1, Math.floor((tall - 4.4) / lead)),
  );
  const ready = shortened(readyLine(piece, drawing), rows.length > 1 ? SECTION_X - 2 : NAMES_WIDTH - 2, { size: 2.2 });
  return (
    textLines(0, y + 3.2, lines, lead, { ...name, tone: 'strong' }) +
    text(0, y + 3.2 + lines.length * lead - 0.3, ready, { size: 2.2 })
  );
}

function pieceShapes(group: PieceRows, y: number, rowHeight: number, drawing: Drawing, axis: Axis): Markup {
  const tall = pieceHeight(group, rowHeight);
  const { piece, rows } = group;
  const each = tall / rows.length;
  const drawn = rows.map((row, i) => {
    const top = y + i * each;
    const section = drawing.names.section(row.piece, row.section);
    const type = { size: 2.4 };
    const most = each >= 5.5 ? 2 : 1;
    const label = wrappedWithin(
      section === '' ? worded`whole piece` : section,
      NAMES_WIDTH - SECTION_X - 1.5,
      type,
      most,
    );
    const rule = i > 0 ? line(SECTION_X, top, width, top, 'rule') : '';
    return (
      rule +
      textLines(SECTION_X, top + (label.length > 1 ? 2.6 : each / 2 + 1), label, 2.7, type) +
      rowShapes(drawing, axis, row, top, width)
    );
  });
  const ready = piece.ready.handedOver;
  const diamond =
    ready !== undefined && ready.safe >= axis.from && ready.safe < axis.to
      ? readyShape(
          axis.x(ready.safe),
          y + tall - rowLook.bar - 0.6,
          worded`${piece.name}: ready to hand over ${momentText(ready.safe, drawing.manner)} (${sayChance(ready.chance)})`,
        )
      : '';
  return line(0, y, width, y, 'piece') + pieceLabel(group, y, tall, drawing) + drawn.join('') + diamond;
}

/** `Mon 11 Jan to Sun 17 Jan 2027` */
export function daysText(model: WeekModel, drawing: Drawing): string {
  const [first] = model.days;
  const last = model.days.at(-1);
  if (first === undefined || last === undefined) return '';
  return worded`${dayText(first.start, drawing.manner)} to ${dayText(last.start, drawing.manner)} ${last.date.slice(0, 4)}`;
}

/** One sheet of the picture of the week. */
export function weekPage(drawing: Drawing, axis: Axis, model: WeekModel, sheet: WeekSheet): Page {
  const top = headerFoot(drawing, axis);
  const room = roomForRows(drawing, axis, sheet.notes.length);
  const rowHeight = rowHeightFor(sheet.pieces, room);
  let y = top;
  const groups = sheet.pieces.map((group) => {
    const shapes = pieceShapes(group, y, rowHeight, drawing, axis);
    y += pieceHeight(group, rowHeight);
    return shapes;
  });
  const foot = Math.max(y, top + 1);
  const pageText = sheet.of > 1 ? worded`picture ${sheet.number} of ${sheet.of} · ` : '';
  const right = worded`${pageText}planned ${momentText(drawing.plan.madeAt, drawing.manner)}`;
  const days = daysText(model, drawing);
  const key = legend(height - LEGEND_HEIGHT + 3.6, width);
  return {
    title: `${drawing.book.shop.name}, ${days}`,
    description: worded`Rows are sections of pieces, columns are days. ${sheet.pieces.map((p) => `${drawing.names.piece(p.piece.id)}: ${readyLine(p.piece, drawing)}`).join('; ')}. The day sheet after the picture says the same in words.`,
    drawing: [
      text(0, headerLook.title, shortened(drawing.book.shop.name, 110, { size: 5, bold: true }), {
        size: 5,
        bold: true,
        tone: 'strong',
      }),
      text(width / 2 + 30, headerLook.title, days, { size: 4, anchor: 'middle' }),
      text(width, headerLook.title, right, { size: 2.5, anchor: 'end', tone: 'quiet' }),
      weekHeader(drawing, axis, NAMES_WIDTH, foot),
      line(width, headerLook.days - 3.5, width, foot, 'day'),
      ...groups,
      line(0, foot, width, foot, 'piece'),
      textLines(0, height - LEGEND_HEIGHT - (sheet.notes.length - 1) * NOTE_LEAD - 0.5, sheet.notes, NOTE_LEAD, {
        size: 2.3,
      }),
      key.drawing,
    ].join(''),
  };
}

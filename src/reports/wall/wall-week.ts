import type { LocalDay } from '../../time/zone.ts';
import { unite } from '../../time/span.ts';
import { daySheets } from './day-sheet.ts';
import { wrapped } from './measure.ts';
import { paperDocument, sheets, type Page } from './paper.ts';
import { drawingOf, type Drawing, type WallInput } from './wall-input.ts';
import { weekAxis } from './week-axis.ts';
import { weekModel, type PieceRows, type WeekModel } from './week-model.ts';
import { NAMES_WIDTH, daysText, roomForRows, spread, weekPage } from './week-page.ts';
import { worded } from '../../words/worded.ts';

export interface Paper {
  readonly html: string;
  readonly pages: number;
}

const { width } = sheets.landscape;

/** What is not on this sheet, said in words. */
function notesFor(model: WeekModel, drawing: Drawing, rest: readonly PieceRows[], isLast: boolean): string[] {
  const quiet = model.quiet.map((piece) => drawing.names.piece(piece.id));
  const said = [
    ...(rest.length > 0
      ? [worded`On the next sheet: ${rest.map((p) => drawing.names.piece(p.piece.id)).join('; ')}.`]
      : []),
    ...(isLast && quiet.length > 0 ? [worded`Nothing in these days for: ${quiet.join('; ')}.`] : []),
  ];
  return said.flatMap((note) => wrapped(note, width, { size: 2.3 }));
}

/** The most lines of notes that any sheet could need: they are kept free on every one. */
function mostNotes(model: WeekModel, drawing: Drawing): number {
  const all = notesFor({ ...model, quiet: [] }, drawing, model.pieces, false).length;
  const quiet = notesFor(model, drawing, [], true).length;
  return Math.max(quiet, all);
}

function picturePages(model: WeekModel, drawing: Drawing): Page[] {
  const { plan, book } = drawing;
  const work = unite(plan.steps.flatMap((s) => s.spans));
  const axis = weekAxis(book.shop, model.days, work, NAMES_WIDTH, width - NAMES_WIDTH);
  const quietOnly = notesFor(model, drawing, [], true).length;
  const onOne = spread(model.pieces, roomForRows(drawing, axis, quietOnly));
  const parts =
    onOne.length === 1 ? onOne : spread(model.pieces, roomForRows(drawing, axis, mostNotes(model, drawing)));
  return parts.map((pieces, i) =>
    weekPage(drawing, axis, model, {
      pieces,
      notes: notesFor(model, drawing, parts[i + 1] ?? [], i === parts.length - 1),
      number: i + 1,
      of: parts.length,
    }),
  );
}

/** The picture of `days` and their day sheet as one file that prints on A4 or Letter, laid wide. */
export function wallWeek(input: WallInput, days: readonly LocalDay[]): Paper {
  const drawing = drawingOf(input);
  const model = weekModel(input.plan, days);
  const pages = [...picturePages(model, drawing), ...daySheets(model, drawing)];
  return {
    html: paperDocument(`${input.book.shop.name}: ${daysText(model, drawing)}`, 'landscape', pages),
    pages: pages.length,
  };
}

import type { PlannedStep } from '../model/plan.ts';
import { openSpans } from '../model/hours.ts';
import { intersect, subtract, unite, type Span, type Spans } from '../time/span.ts';
import { localDay, type LocalDay } from '../time/zone.ts';
import {
  benchOf,
  pieceCell,
  under,
  wideColumns,
  workRow,
  type Bench,
  type Sheet,
  type UnfitHours,
  type Writing,
} from './bench.ts';
import { careLines, deference, freshAirRows, generalWarnings } from './care.ts';
import { dryingOn, sayWaiting } from './day-drying.ts';
import { workOn } from './day-work.ts';
import { datedRows } from './dated-rows.ts';
import { grouped } from './grouped.ts';
import { grid, painted, paragraph, type Cell, type Column } from './layout.ts';
import { saidOnce } from './look.ts';
import { saySaved } from './sessions.ts';
import { proofLines } from './proof.ts';
import { noPieceLines } from './no-piece.ts';
import { readyLines } from './ready-dates.ts';
import { weekPicture } from './wall/picture.ts';
import { sayClocks, sayDate, sayDay, sayMoment } from './say-time.ts';
import { translated, worded } from '../words/worded.ts';

const narrowColumns = 60;

/** The bench sheet of `days` days from now: what to do, what dries, when not to coat; then what becomes of it all. */
export function weekScreen(sheet: Sheet, writing: Writing, days: number, withPicture = false): string {
  const bench = benchOf(sheet, writing);
  const { look, manner } = writing;
  const shownDays = Array.from({ length: days }, (_, plus) => localDay(manner.now, manner.zone, plus));
  // A limit and its source need to be told once a week.
  const limitsSaid = new Set<string>();
  const head = worded`${sheet.book.shop.name} · planned ${sayMoment(manner.now, manner)}`;
  return [
    ...paragraph(head, look),
    ...(withPicture ? ['', ...pictureLines(shownDays, bench)] : []),
    ...shownDays.flatMap((day) => ['', ...dayLines(day, bench, limitsSaid)]),
    '',
    ...endLines(bench, { start: manner.now, end: shownDays.at(-1)?.end ?? manner.now }, days),
    '',
  ].join('\n');
}

function pictureLines(days: readonly LocalDay[], { plan, book, names, look }: Bench): string[] {
  return weekPicture({ plan, shop: book.shop, names, days, look });
}

function dayLines(day: LocalDay, bench: Bench, limitsSaid: Set<string>): string[] {
  return [
    ...paragraph(dayHead(day, bench), bench.look, 0, bench.look.paint.strong),
    ...dayGrid(day, bench, limitsSaid),
  ];
}

/** `Mon 11 Jan, today · open 08:00–12:30, 13:15–17:30` */
export function dayHead(day: LocalDay, { book, manner }: Pick<Bench, 'book' | 'manner'>): string {
  const open = openSpans(book.shop.opening, manner.zone, day.start, day.end).filter((s) => s.start < day.end);
  const date = sayDate(day.start, manner);
  const near = sayDay(day.start, manner);
  const hours = open.length === 0 ? worded`closed` : worded`open ${open.map((s) => sayClocks(s, manner)).join(', ')}`;
  return `${date}${near === date ? '' : `, ${near}`} · ${hours}`;
}

/** Everything of one day in one grid: the hour or the kind of line, the piece, the rest. */
function dayGrid(day: LocalDay, bench: Bench, limitsSaid: Set<string>): string[] {
  const { look, plan } = bench;
  const said = new Set<string>();
  const care = (step: PlannedStep) => careLines(step, bench, said);
  const work = workOn(day, plan.steps).map((w, i, all) => workRow(w, bench, care, all[i - 1]?.step));
  const nothing = [['', painted(look.paint.quiet, worded`no hands-on work`), '', '']];
  const rows = [
    ...(work.length === 0 ? nothing : work),
    ...datedRows(day, bench),
    ...dryingRows(day, bench),
    ...freshAirRows(day, bench, limitsSaid),
    ...unfitRows(day, bench),
  ];
  return benchGrid(rows, bench);
}

/** Rows of hour, piece, what, where-and-with, laid out for the width there is. */
export function benchGrid(rows: readonly Cell[][], { look }: Bench): string[] {
  const hour: Column = { align: 'right', least: 11 };
  if (look.columns < narrowColumns)
    return grid(
      rows.map(([time = '', ...rest]) => [time, under(...rest)]),
      [hour, {}],
      look,
      1,
    );
  const columns: Column[] = [
    hour,
    { least: 16, most: look.columns >= wideColumns ? 32 : 20 },
    { least: 20 },
    { least: 20 },
  ];
  if (look.columns >= wideColumns) return grid(rows, columns, look, 2);
  return grid(
    rows.map(([time = '', piece = '', what = '', details = '']) => [time, piece, under(what, details)]),
    columns.slice(0, 3),
    look,
    2,
  );
}

/** What dries, and from when it is fit for what waits for it. */
export function dryingRows(day: LocalDay, bench: Bench): Cell[][] {
  const { look, manner, names, plan } = bench;
  return dryingOn(day, plan.steps).map(({ film, waiting }, i, all) => {
    const coat = film.coat === undefined ? '' : worded`, coat ${film.coat}`;
    const what = `${names.material(film.material ?? film.step)}${coat}`;
    return [
      painted(look.paint.quiet, saidOnce(worded`drying`, i, look)),
      pieceCell(film, bench, all[i - 1]?.film),
      `${what}: ${waiting.map((w) => sayWaiting(w, day.start, manner)).join('; ')}`,
      '',
    ];
  });
}

/** A row a room: when not to coat there, and why. */
export function unfitRows(day: LocalDay, { book, unfit, look, manner, names }: Bench): Cell[][] {
  const open = openSpans(book.shop.opening, manner.zone, day.start, day.end);
  const today = unfit.filter((u) => u.span.start < day.end && u.span.end > day.start);
  const sayHours = (hours: readonly UnfitHours[]) =>
    covers(hours, open, day) ? worded`all day` : hours.map((u) => sayClocks(u.span, manner)).join(', ');
  return [...grouped(today, (u) => u.room)].map(([room, ofRoom], i) => [
    painted(look.paint.quiet, saidOnce(worded`no coating`, i, look)),
    names.room(room),
    [...grouped(ofRoom, (u) => u.why)].map(([why, hours]) => `${sayHours(hours)}: ${why}`),
    '',
  ]);
}

function covers(hours: readonly UnfitHours[], open: Spans, day: Span): boolean {
  return subtract(intersect(open, [day]), unite(hours.map((u) => u.span))).length === 0;
}

function endLines(bench: Bench, shown: Span, days: number): string[] {
  const { plan, look, manner } = bench;
  if (plan.pieces.length === 0) return noPieceLines(look);
  const general = generalWarnings(bench);
  const saved = saySaved(plan, shown, days);
  return [
    ...readyLines(plan.pieces, manner, look),
    ...(general.length === 0 ? [] : ['']),
    ...general,
    ...(bench.safety === undefined ? [] : ['', ...paragraph(translated(deference), look, 2, look.paint.quiet)]),
    '',
    ...proofLines(plan.proof, look),
    ...(saved === '' ? [] : paragraph(saved, look, 2, look.paint.quiet)),
  ];
}

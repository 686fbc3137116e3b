import type { Book } from '../model/book.ts';
import { openSpans } from '../model/hours.ts';
import type { Plan } from '../model/plan.ts';
import type { Task } from '../model/task.ts';
import type { Span } from '../time/span.ts';
import { localDay, type LocalDay } from '../time/zone.ts';
import { dryingOn, sayWaiting } from './day-drying.ts';
import { whereAndWith, workOn, type Work } from './day-work.ts';
import { grid, painted, paragraph, type Cell, type Column } from './layout.ts';
import type { Look } from './look.ts';
import { namesOf, type Names } from './names.ts';
import { proofLines } from './proof.ts';
import { readyRows } from './ready-dates.ts';
import { sayClocks, sayDate, sayDay, sayMoment, type Manner } from './say-time.ts';

/** Hours in which the air of a room forbids coating, and why. */
export interface UnfitHours {
  readonly room: string;
  readonly span: Span;
  readonly why: string;
}

/** What the bench sheet is made of. */
export interface Sheet {
  readonly book: Book;
  readonly plan: Plan;
  readonly tasks: readonly Task[];
  readonly unfit: readonly UnfitHours[];
}

/** How and for whom it is written. */
export interface Writing {
  readonly manner: Manner;
  readonly look: Look;
}

interface Bench extends Sheet, Writing {
  readonly names: Names;
  readonly taskOf: ReadonlyMap<string, Task>;
}

const wideColumns = 100;
const narrowColumns = 60;

/** The bench sheet of `days` days from now: what to do, what dries, when not to coat; then what becomes of it all. */
export function weekScreen(sheet: Sheet, writing: Writing, days: number): string {
  const bench: Bench = {
    ...sheet,
    ...writing,
    names: namesOf(sheet.book),
    taskOf: new Map(sheet.tasks.map((t) => [t.id, t])),
  };
  const { look, manner } = writing;
  const shownDays = Array.from({ length: days }, (_, plus) => localDay(manner.now, manner.zone, plus));
  const head = `${sheet.book.shop.name} · ${sayDate(manner.now, manner)}, ${sayMoment(manner.now, manner)}`;
  return [
    ...paragraph(head, look, 0, look.paint.strong),
    ...shownDays.flatMap((day) => ['', ...dayLines(day, bench)]),
    '',
    ...endLines(bench),
    '',
  ].join('\n');
}

function dayLines(day: LocalDay, bench: Bench): string[] {
  return [...paragraph(dayHead(day, bench), bench.look, 0, bench.look.paint.strong), ...dayGrid(day, bench)];
}

/** `Mon 11 Jan, today · open 08:00–12:30, 13:15–17:30` */
export function dayHead(day: LocalDay, { book, manner }: Pick<Bench, 'book' | 'manner'>): string {
  const open = openSpans(book.shop.opening, manner.zone, day.start, day.end).filter((s) => s.start < day.end);
  const date = sayDate(day.start, manner);
  const near = sayDay(day.start, manner);
  const hours = open.length === 0 ? 'closed' : `open ${open.map((s) => sayClocks(s, manner)).join(', ')}`;
  return `${date}${near === date ? '' : `, ${near}`} · ${hours}`;
}

/** Everything of one day in one grid: the hour or the kind of line, the piece, the rest. */
export function dayGrid(day: LocalDay, bench: Bench): string[] {
  const { look, plan } = bench;
  const said = new Set<string>();
  const rows = [
    ...workOn(day, plan.steps).map((work) => workRow(work, bench, said)),
    ...dryingRows(day, bench),
    ...unfitRows(day, bench),
  ];
  if (rows.length === 0) return paragraph('nothing to do', look, 2, look.paint.quiet);
  if (look.columns < narrowColumns) return grid(rows.map(stacked), [{ align: 'right' }, {}], look, 1);
  const columns: Column[] = [{ align: 'right', least: 11 }, { least: 16 }, { least: 20 }, { least: 20 }];
  if (look.columns >= wideColumns) return grid(rows, columns, look, 2);
  return grid(
    rows.map(([time = '', piece = '', what = '', details = '']) => [time, piece, under(what, details)]),
    columns.slice(0, 3),
    look,
    2,
  );
}

const linesOf = (cell: Cell) => (typeof cell === 'string' || 'text' in cell ? [cell] : cell);
const isSaid = (line: Cell) => line !== '' && !(typeof line === 'object' && 'text' in line && line.text === '');

function under(...cells: Cell[]): Cell {
  return cells.flatMap(linesOf).filter(isSaid);
}

function stacked([time = '', ...rest]: Cell[]): Cell[] {
  return [time, under(...rest)];
}

function pieceCell(piece: string, section: string, { names, look }: Bench): Cell {
  const part = names.section(piece, section);
  const name = names.piece(piece);
  if (look.columns >= wideColumns) return part === '' ? name : `${name}, ${part}`;
  return under(name, painted(look.paint.quiet, part));
}

function state(work: Work): string {
  if (work.step.done === true) return ' (done)';
  if (work.step.atWork === true) return ' (at work)';
  if (work.goesOn) return ' (goes on)';
  return work.breaksOff ? ' (goes on later)' : '';
}

function workRow(work: Work, bench: Bench, said: Set<string>): Cell[] {
  const { step } = work;
  const { look, manner, names, book } = bench;
  const { strong, quiet, warn } = look.paint;
  const task = bench.taskOf.get(step.id);
  const coat = step.coat === undefined ? '' : `, coat ${step.coat}`;
  const caution = task?.caution === undefined || said.has(task.caution) || work.goesOn ? '' : task.caution;
  if (caution !== '') said.add(caution);
  const isDone = step.done === true;
  return [
    painted(isDone ? quiet : strong, sayClocks(work.span, manner)),
    pieceCell(step.piece, step.section, bench),
    under(
      isDone ? painted(quiet, `${step.title}${coat}${state(work)}`) : `${step.title}${coat}${state(work)}`,
      caution === '' ? '' : painted(warn, `Careful: ${caution}`),
    ),
    work.goesOn ? '' : painted(quiet, whereAndWith(step, task, names, book.shop.hands.length > 1)),
  ];
}

function dryingRows(day: LocalDay, bench: Bench): Cell[][] {
  const { look, manner, names, plan } = bench;
  return dryingOn(day, plan.steps).map(({ film, waiting }, i) => {
    const coat = film.coat === undefined ? '' : `, coat ${film.coat}`;
    return [
      painted(look.paint.quiet, i === 0 ? 'drying' : ''),
      pieceCell(film.piece, film.section, bench),
      waiting.map((w) => sayWaiting(w, day.start, manner)),
      painted(look.paint.quiet, `${names.material(film.material ?? film.step)}${coat}`),
    ];
  });
}

function unfitRows(day: LocalDay, bench: Bench): Cell[][] {
  const { look, manner, names } = bench;
  const today = bench.unfit.filter((u) => u.span.start < day.end && u.span.end > day.start);
  return [...new Set(today.map((u) => u.room))].map((room, i) => [
    painted(look.paint.quiet, i === 0 ? 'no coating' : ''),
    names.room(room),
    today
      .filter((u) => u.room === room)
      .map((u) => {
        const span = { start: Math.max(u.span.start, day.start), end: Math.min(u.span.end, day.end) };
        const allDay = span.start === day.start && span.end === day.end;
        return `${allDay ? 'all day' : sayClocks(span, manner)}: ${u.why}`;
      }),
    '',
  ]);
}

function endLines({ plan, look, manner }: Bench): string[] {
  const columns: Column[] = [{ least: 14 }, { least: 14 }, { least: 14 }, { least: 14 }, {}];
  return [
    ...grid(readyRows(plan.pieces, manner, look), columns, look, 2),
    ...plan.warnings.flatMap((w) => ['', ...paragraph(`Careful: ${w.text}`, look, 2, look.paint.warn)]),
    '',
    ...proofLines(plan.proof, look),
  ];
}

import type { Plan } from '../../model/plan.ts';
import type { Shop } from '../../model/shop.ts';
import { openSpans } from '../../model/hours.ts';
import type { Minute, Span, Spans } from '../../time/span.ts';
import { localTime, type LocalDay } from '../../time/zone.ts';
import { cut, paragraphs } from '../layout.ts';
import type { Look } from '../look.ts';
import type { Names } from '../names.ts';
import { weekModel, type WeekRow } from './week-model.ts';
import { shortWeekday } from '../../words/calendar-names.ts';
import { counted, worded } from '../../words/worded.ts';

/** Signs of one cell, the strongest first. Each is a shape of its own, so that the picture needs no colour. */
const signsOf = {
  wide: { work: '█', window: '=', drying: '░', closed: '·', free: ' ', day: '│' },
  ascii: { work: '#', window: '=', drying: '~', closed: '.', free: ' ', day: '|' },
} as const;

export interface PictureInput {
  readonly plan: Plan;
  readonly shop: Shop;
  readonly names: Names;
  readonly days: readonly LocalDay[];
  readonly look: Look;
}

const LEAST_CELLS_A_DAY = 6;
const NAMES_SHARE = 0.3;

/** The same number of cells for each day, as many as the width allows; a day's cells share its minutes. */
function cellsOf(days: readonly LocalDay[], count: number): Span[][] {
  return days.map((day) =>
    Array.from({ length: count }, (_, i) => ({
      start: day.start + Math.round((i * (day.end - day.start)) / count),
      end: day.start + Math.round(((i + 1) * (day.end - day.start)) / count),
    })),
  );
}

const meets = (spans: readonly Span[], cell: Span) => spans.some((s) => s.start < cell.end && s.end > cell.start);

function rowCells(row: WeekRow, cells: readonly Span[][], open: Spans, look: Look): string {
  const signs = look.ascii ? signsOf.ascii : signsOf.wide;
  const kinds = [
    [row.works.map((w) => w.span), signs.work],
    [row.windows.map((w) => w.span), signs.window],
    [row.dryings.map((d) => d.span), signs.drying],
    [open, signs.free],
  ] as const;
  const sign = (cell: Span) => kinds.find(([spans]) => meets(spans, cell))?.[1] ?? signs.closed;
  return cells.map((day) => day.map(sign).join('')).join(signs.day);
}

function dayHead(start: Minute, zone: string, room: number): string {
  const { weekday, day } = localTime(start, zone);
  return `${shortWeekday(weekday)} ${day}`.slice(0, room).padEnd(room);
}

function padded(text: string, room: number, look: Look): string {
  const fit = cut(text, room, look);
  return fit + ' '.repeat(Math.max(0, room - look.widthOf(fit)));
}

/** Days that fit beside the names; the rest is told, not cut in silence. */
function daysThatFit(days: readonly LocalDay[], room: number): readonly LocalDay[] {
  return days.slice(0, Math.max(1, Math.floor((room + 1) / (LEAST_CELLS_A_DAY + 1))));
}

/** The week as lines of a terminal: a row a section, a column of cells a day, and what the signs mean. */
export function weekPicture({ plan, shop, names, days, look }: PictureInput): string[] {
  const nameRoom = Math.max(10, Math.min(34, Math.floor(look.pictureColumns * NAMES_SHARE)));
  const room = look.pictureColumns - nameRoom - 1;
  const shown = daysThatFit(days, room);
  const perDay = Math.min(24, Math.max(1, Math.floor((room + 1) / shown.length) - 1));
  const cells = cellsOf(shown, perDay);
  const model = weekModel(plan, shown);
  const open = openSpans(shop.opening, shop.timeZone, shown[0]?.start ?? 0, shown.at(-1)?.end ?? 0);
  const signs = look.ascii ? signsOf.ascii : signsOf.wide;
  const head = shown.map((day) => dayHead(day.start, shop.timeZone, perDay)).join(signs.day);
  const rows = model.pieces.flatMap(({ piece, rows: own }) =>
    own.map((row) => {
      const section = names.section(row.piece, row.section);
      const name = `${names.piece(piece.id)}${section === '' ? '' : `, ${section}`}`;
      return `${padded(name, nameRoom, look)} ${rowCells(row, cells, open, look)}`.trimEnd();
    }),
  );
  const key = worded`${signs.work} work  ${signs.drying} drying  ${signs.window} window open  ${signs.closed} closed`;
  const left = days.length - shown.length;
  const said = [
    key,
    ...(left > 0
      ? [counted(left, '{0} more day does not fit this width.', '{0} more days do not fit this width.')]
      : []),
    ...(model.quiet.length > 0
      ? [worded`Nothing in these days for: ${model.quiet.map((p) => names.piece(p.id)).join('; ')}.`]
      : []),
  ];
  return [`${' '.repeat(nameRoom)} ${head}`.trimEnd(), ...rows, ...paragraphs(said.join('\n'), look).split('\n')];
}

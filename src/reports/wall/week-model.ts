import type { Plan, PlannedPiece, PlannedStep } from '../../model/plan.ts';
import type { Minute, Span } from '../../time/span.ts';
import type { LocalDay } from '../../time/zone.ts';
import { dryingSpan, workEnd, workStart } from '../calendar/drying-span.ts';
import { workOn, type Work } from '../day-work.ts';

/** Hands-on work with its number: the order of its day, on the picture and on the day sheet alike. */
export interface NumberedWork extends Work {
  readonly number: number;
  readonly day: LocalDay;
}

export interface WindowBand {
  readonly step: PlannedStep;
  /** From opening until the coat goes on. */
  readonly span: Span;
  readonly shuts?: Minute;
}

export interface WeekRow {
  readonly piece: string;
  readonly section: string;
  readonly works: readonly NumberedWork[];
  readonly dryings: readonly { readonly step: PlannedStep; readonly span: Span }[];
  readonly windows: readonly WindowBand[];
}

export interface PieceRows {
  readonly piece: PlannedPiece;
  readonly rows: readonly WeekRow[];
}

export interface WeekModel {
  readonly days: readonly LocalDay[];
  readonly works: readonly NumberedWork[];
  readonly pieces: readonly PieceRows[];
  /** Pieces for which nothing happens in these days. */
  readonly quiet: readonly PlannedPiece[];
}

function touches(span: Span, week: Span): boolean {
  return span.start < week.end && span.end > week.start;
}

function windowBand(step: PlannedStep): WindowBand[] {
  const { window } = step;
  if (window === undefined) return [];
  const end = Math.min(workStart(step), window.shuts ?? Infinity);
  const band = {
    step,
    span: { start: window.opens, end },
    ...(window.shuts === undefined ? {} : { shuts: window.shuts }),
  };
  return end > window.opens ? [band] : [];
}

function rowOf(plan: Plan, works: readonly NumberedWork[], week: Span, steps: readonly PlannedStep[]): WeekRow {
  const [first] = steps;
  return {
    piece: first?.piece ?? '',
    section: first?.section ?? '',
    works: works.filter((w) => steps.includes(w.step)),
    dryings: steps.flatMap((step) => {
      const span = dryingSpan(plan, step);
      return span !== undefined && touches(span, week) ? [{ step, span }] : [];
    }),
    windows: steps.flatMap(windowBand).filter((w) => touches(w.span, week)),
  };
}

function rowsOf(plan: Plan, piece: PlannedPiece, works: readonly NumberedWork[], week: Span): WeekRow[] {
  const own = plan.steps.filter((s) => s.piece === piece.id);
  const sections = [...new Set(own.map((s) => s.section))];
  const firstStart = (section: string) => Math.min(...own.filter((s) => s.section === section).map(workStart));
  return sections
    .sort((a, b) => firstStart(a) - firstStart(b) || (a < b ? -1 : 1))
    .map((section) =>
      rowOf(
        plan,
        works,
        week,
        own.filter((s) => s.section === section),
      ),
    )
    .filter((row) => row.works.length + row.dryings.length + row.windows.length > 0);
}

/** What happens to each section in `days`, pieces in the order in which they are taken in hand. */
export function weekModel(plan: Plan, days: readonly LocalDay[]): WeekModel {
  const week: Span = { start: days[0]?.start ?? 0, end: days.at(-1)?.end ?? 0 };
  const works = days.flatMap((day) => workOn(day, plan.steps).map((work, i) => ({ ...work, day, number: i + 1 })));
  const all = plan.pieces.map((piece) => ({ piece, rows: rowsOf(plan, piece, works, week) }));
  const firstIn = ({ piece }: PieceRows) =>
    Math.min(...plan.steps.filter((s) => s.piece === piece.id && workEnd(s) > week.start).map(workStart));
  return {
    days,
    works,
    pieces: all.filter((p) => p.rows.length > 0).sort((a, b) => firstIn(a) - firstIn(b)),
    quiet: all.filter((p) => p.rows.length === 0).map((p) => p.piece),
  };
}

import { planDocument } from '../model/plan-document.ts';
import { isoWriter } from '../time/iso.ts';
import { localDay } from '../time/zone.ts';
import { aheadDocument } from './ahead.ts';
import type { Sheet } from './bench.ts';
import { careOf } from '../model/safety.ts';
import { freshAirOn } from './care.ts';
import { datedIn, type Dated } from './dated.ts';
import { workOn } from './day-work.ts';
import type { Manner } from './say-time.ts';

/** One day as a document: the steps with work on it, and the hours not fit for coating. Times ISO 8601. */
export function todayDocument(sheet: Sheet, { now, zone }: Manner) {
  const { plan, unfit } = sheet;
  const iso = isoWriter(zone);
  const day = localDay(now, zone);
  const ids = new Set(workOn(day, plan.steps).map((w) => w.step.id));
  return {
    format: 'drybench.today/1',
    now: iso(now),
    timeZone: zone,
    date: day.date,
    steps: planDocument(plan).steps.filter((s) => ids.has(s.id)),
    ...(sheet.ahead && aheadDocument(sheet.ahead, iso)),
    fixed: datedIn(day, sheet.book).map((dated) => fixedOn(dated, iso)),
    care: careOn(sheet, ids),
    freshAir: freshAirOn(day, sheet).map(({ from, ...need }) => ({ from: iso(from), ...need })),
    unfit: unfit.map(({ room, span, why }) => ({ room, start: iso(span.start), end: iso(span.end), why })),
  };
}

/** Appointments, stays away, days off and hours of hired rooms. */
function fixedOn(dated: Dated, iso: (minute: number) => string) {
  const times = { start: iso(dated.span.start), end: iso(dated.span.end) };
  if (dated.kind !== 'appointment') return { ...dated, span: undefined, ...times };
  const { what, hands, brings, takes } = dated.appointment;
  return { kind: dated.kind, ...times, what, hands, brings, takes };
}

/** What is to be said for care, by step. */
function careOn({ book, tasks, safety = [] }: Sheet, ids: ReadonlySet<string>) {
  return tasks.flatMap((task) => {
    if (!ids.has(task.id)) return [];
    const { own, pages } = careOf(task, book.materials.get(task.material ?? ''), safety);
    const say = [...own, ...pages.map((p) => p.short)];
    return say.length === 0 ? [] : [{ step: task.id, say }];
  });
}

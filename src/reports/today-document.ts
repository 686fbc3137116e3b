import { planDocument } from '../model/plan-document.ts';
import { isoWriter } from '../time/iso.ts';
import { localDay } from '../time/zone.ts';
import type { Sheet } from './bench.ts';
import { workOn } from './day-work.ts';
import type { Manner } from './say-time.ts';

/** One day as a document: the steps with work on it, and the hours not fit for coating. Times ISO 8601. */
export function todayDocument({ plan, unfit }: Sheet, { now, zone }: Manner) {
  const iso = isoWriter(zone);
  const day = localDay(now, zone);
  const ids = new Set(workOn(day, plan.steps).map((w) => w.step.id));
  return {
    format: 'drybench.today/1',
    now: iso(now),
    timeZone: zone,
    date: day.date,
    steps: planDocument(plan).steps.filter((s) => ids.has(s.id)),
    unfit: unfit.map(({ room, span, why }) => ({ room, start: iso(span.start), end: iso(span.end), why })),
  };
}

import type { Plan } from '../model/plan.ts';
import type { UnfitHours } from '../reports/bench.ts';
import { unfitHours } from '../reports/unfit-hours.ts';
import { localDay } from '../time/zone.ts';
import type { OpenShop } from './open-shop.ts';
import type { Planned } from './plan-grounds.ts';

function stillLaid(plan: Plan): ReadonlySet<string> {
  return new Set(plan.steps.flatMap((s) => (s.done === true || s.material === undefined ? [] : [s.material])));
}

/** When the air forbids what the plan still lays down over `days` days from today. */
export function coatingHours({ book, manner }: OpenShop, { plan, air }: Planned, days: number): UnfitHours[] {
  const laid = stillLaid(plan);
  const materials = [...book.materials.values()].filter((m) => laid.has(m.id));
  const shown = Array.from({ length: days }, (_, plus) => localDay(manner.now, manner.zone, plus));
  return shown.flatMap((day) => unfitHours(book, materials, air, day, manner));
}

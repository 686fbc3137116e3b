import type { AirSeries } from '../../src/air/series.ts';
import type { Plan, PlannedStep } from '../../src/model/plan.ts';
import type { Situation } from '../../src/model/situation.ts';
import type { Task } from '../../src/model/task.ts';
import type { Minute } from '../../src/time/span.ts';
import type { RuleName } from '../../src/verify/breach.ts';
import type { Evidence } from '../../src/verify/facts.ts';
import { verify } from '../../src/verify/verify.ts';
import { situation, steps, tasks, type Name } from './base.ts';
import { evidenceOf, on, shop, step, type Placed } from './fixture.ts';

type PlannedName = keyof typeof steps;

/** The base plan's step begun at another time or place, with its times worked out anew. */
export function moved(name: PlannedName, to: Partial<Placed>): Partial<PlannedStep> {
  const { spans, station, hands, after } = steps[name];
  return step(tasks[name], { at: spans[0]!.start, station, hands, ...to, over: { after, ...to.over } });
}

/** The base situation with some tasks changed, or left out where undefined. */
export function asking(
  changes: Partial<Record<Name, Partial<Task> | undefined>>,
  over: Partial<Situation> = {},
): Situation {
  const changed = Object.entries(tasks).flatMap(([name, task]): Task[] => {
    if (!(name in changes)) return [task];
    const change = changes[name as Name];
    return change === undefined ? [] : [{ ...task, ...change }];
  });
  return { ...situation, tasks: changed, ...over };
}

/** The names of the rules that a plan breaks. What the plan shows is left out unless `shown` asks for it. */
export function broken(plan: Plan, of: Situation = situation, over: Partial<Evidence> = {}, shown = false): RuleName[] {
  const names = new Set(verify(evidenceOf(of, over), plan).map((b) => b.rule));
  if (!shown) names.delete('shown');
  return [...names].sort();
}

/** The air of the small shop, one sample a minute, with another air in one room from `from` to `to`. */
export function airWith(
  room: string,
  from: Minute,
  to: Minute,
  { tempC = 23, rhPercent = 50 }: { tempC?: number; rhPercent?: number },
): ReadonlyMap<string, AirSeries> {
  const start = on('mon', '00:00');
  const count = 4 * 1440;
  const series = (temp: number, rh: number, where: string): AirSeries => {
    const odd = (i: number) => where === room && start + i >= from && start + i < to;
    return {
      from: start,
      stepMinutes: 1,
      tempC: Float64Array.from({ length: count }, (_, i) => (odd(i) ? temp : 23)),
      rhPercent: Float64Array.from({ length: count }, (_, i) => (odd(i) ? rh : 50)),
      notes: [],
    };
  };
  return new Map(shop.rooms.map((r) => [r.id, series(tempC, rhPercent, r.id)]));
}

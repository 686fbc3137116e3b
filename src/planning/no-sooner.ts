import { leastMinutes } from '../model/paced-work.ts';
import { endOf, type Plan } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Task } from '../model/task.ts';
import { oncePer } from '../once-per.ts';
import type { Minute } from '../time/span.ts';

/** From when on anything can be done otherwise, and whether films dry then as planned. */
export interface Moment {
  readonly now: Minute;
  readonly sameAir: boolean;
}

/** The least that it can take, by whomever and together with whatever. */
function shortest({ ways }: Task, { paces }: Situation): number {
  const all = ways.flatMap((way) => [way.workMinutes, ...Object.values(way.inSession ?? {})]);
  return leastMinutes(Math.min(...all), paces);
}

/**
 * No step of `moving` can begin sooner than this, by its id: after what stays and comes before it, dried where the air is as
 * planned, and after the work of what moves and comes before it. Of hours, hands and places nothing is asked.
 */
export function noSooner(
  situation: Situation,
  plan: Plan,
  moving: ReadonlySet<string>,
  { now, sameAir }: Moment,
): (id: string) => Minute {
  const tasks = new Map(situation.tasks.map((t) => [t.id, t]));
  const steps = new Map(plan.steps.map((s) => [s.id, s]));
  const arrives = new Map(situation.book.pieces.map((p) => [p.id, p.arrives ?? now]));
  const boundOf = oncePer((task: Task): Minute => {
    const waits = sameAir ? (steps.get(task.id)?.after ?? []).filter((a) => !moving.has(a.step)) : [];
    const needs = task.needs.map(({ task: other, kind }): Minute => {
      const before = tasks.get(other);
      const step = steps.get(other);
      if (kind === 'within' || step === undefined) return now;
      return before !== undefined && moving.has(other)
        ? boundOf(before, undefined) + shortest(before, situation)
        : endOf(step);
    });
    const since = [arrives.get(task.piece) ?? now, situation.notBefore.get(task.id) ?? now];
    return Math.max(now, ...since, ...needs, ...waits.map((a) => a.notBefore));
  });
  return (id) => {
    const task = tasks.get(id);
    return task === undefined ? now : boundOf(task, undefined);
  };
}

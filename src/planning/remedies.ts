import type { PlannedStep } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Minute } from '../time/span.ts';
import type { Standing } from './current-plan.ts';
import { filmsThatLie } from './lying-film.ts';

/** A coat that goes into a late window, and what has to be done for that which an earlier one would have spared. */
export interface LateCoat {
  readonly coat: PlannedStep;
  /** The step that comes in by itself. */
  readonly remedy: PlannedStep;
  /** Id of the step whose film waits. */
  readonly film: string;
  /** When the last window shuts, or did, that asks for no such step. */
  readonly shuts: Minute;
}

/** The coats still to come, over films that lie, which the plan lays after a step that is only there because they are late. */
export function lateCoats(situation: Situation, standing: Standing): LateCoat[] {
  const { steps } = standing.plan;
  const taskOf = new Map(situation.tasks.map((t) => [t.id, t]));
  const stepOf = new Map(steps.map((s) => [s.id, s]));
  const lying = filmsThatLie(situation, standing);
  return steps.flatMap((remedy): LateCoat[] => {
    const coat = stepOf.get(taskOf.get(remedy.id)?.onlyFor ?? '');
    if (coat === undefined || coat.done === true) return [];
    return (taskOf.get(coat.id)?.needs ?? []).flatMap((need): LateCoat[] => {
      if (need.kind !== 'window' || !need.windows.some((w) => w.prepTask === remedy.id)) return [];
      const edgesOf = lying(need.task);
      if (edgesOf === undefined) return [];
      const shuts = need.windows.filter((w) => w.prepTask === undefined).flatMap((w) => edgesOf(w).shuts ?? []);
      return shuts.length === 0 ? [] : [{ coat, remedy, film: need.task, shuts: Math.max(...shuts) }];
    });
  });
}

import { windowMaps } from '../drying/windows.ts';
import type { PlannedStep } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Minute } from '../time/span.ts';
import type { Standing } from './current-plan.ts';

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
export function lateCoats({ book, tasks }: Situation, { plan, air, factors }: Standing): LateCoat[] {
  const taskOf = new Map(tasks.map((t) => [t.id, t]));
  const stepOf = new Map(plan.steps.map((s) => [s.id, s]));
  return plan.steps.flatMap((remedy): LateCoat[] => {
    const coat = stepOf.get(taskOf.get(remedy.id)?.onlyFor ?? '');
    if (coat === undefined || coat.done === true) return [];
    return (taskOf.get(coat.id)?.needs ?? []).flatMap((need): LateCoat[] => {
      if (need.kind !== 'window' || !need.windows.some((w) => w.prepTask === remedy.id)) return [];
      const lies = stepOf.get(need.task);
      const film = taskOf.get(need.task)?.ways.find((w) => w.name === lies?.way)?.film;
      const [material, series] = [book.materials.get(film?.material ?? ''), air.get(lies?.room ?? '')];
      const end = lies?.spans.at(-1)?.end;
      if (lies?.done !== true || film === undefined || end === undefined) return [];
      if (material === undefined || series === undefined) return [];
      const edges = need.windows
        .filter((w) => w.prepTask === undefined)
        .flatMap((w) => windowMaps(w, material, film, series, factors.get(need.task)).shuts?.at(end) ?? []);
      return edges.length === 0 ? [] : [{ coat, remedy, film: need.task, shuts: Math.max(...edges) }];
    });
  });
}

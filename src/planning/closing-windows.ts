import { fitHours } from '../drying/fit-hours.ts';
import type { PlannedStep } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Task } from '../model/task.ts';
import { workHours } from '../schedule/work-hours.ts';
import { intersect, unite, type Minute } from '../time/span.ts';
import type { Standing } from './current-plan.ts';
import { filmsThatLie } from './lying-film.ts';

/** A coat that could still go into a window that shuts, while the plan lets it wait for a later one. */
export interface EarlyWindow {
  readonly coat: PlannedStep;
  /** Id of the step whose film waits. */
  readonly film: string;
  /** Last minute at which it may still begin in the earlier window. */
  readonly shuts: Minute;
  /** When the window opens that the plan waits for. */
  readonly reopens: Minute;
}

/** The coats over films that lie for which a window is open, or opens, before `until`, and which the plan lets pass. */
export function earlyWindows(situation: Situation, standing: Standing, until: Minute): EarlyWindow[] {
  const { book, tasks, now } = situation;
  const { plan, air } = standing;
  const stepOf = new Map(plan.steps.map((s) => [s.id, s]));
  const lying = filmsThatLie(situation, standing);
  const hours = workHours(book.shop, now, until);
  const someoneIn = unite(book.shop.hands.flatMap((hand) => [...hours.ofHands([hand.id])]));
  return tasks.flatMap((task) => {
    const coat = stepOf.get(task.id);
    const start = coat?.spans[0]?.start;
    if (coat?.window === undefined || start === undefined || !isNext(task, stepOf)) return [];
    const { of, opens } = coat.window;
    const laid = task.ways.find((w) => w.name === coat.way)?.film;
    const [material, room] = [book.materials.get(laid?.material ?? ''), air.get(coat.room)];
    const edgesOf = lying(of);
    return task.needs.flatMap((need): EarlyWindow[] => {
      if (need.kind !== 'window' || need.task !== of || edgesOf === undefined) return [];
      return need.windows.flatMap((window): EarlyWindow[] => {
        if (window.prepTask !== undefined) return [];
        const edges = edgesOf(window);
        const [first, last] = [Math.max(now, edges.opens), edges.shuts];
        if (last === undefined || last >= Math.min(start, until) || first > last) return [];
        const open = [{ start: first, end: last + 1 }];
        const fit = material === undefined || room === undefined ? open : fitHours(material, room, first, last + 1);
        return intersect(intersect(open, fit), someoneIn)
          .slice(-1)
          .map((span) => ({ coat, film: of, shuts: span.end - 1, reopens: opens }));
      });
    });
  });
}

/** Is the step still to come, with nothing before it that is? */
function isNext(task: Task, stepOf: ReadonlyMap<string, PlannedStep>): boolean {
  const step = stepOf.get(task.id);
  if (step === undefined || step.done === true || step.atWork === true) return false;
  return task.needs.every((need) => stepOf.get(need.task)?.done === true);
}

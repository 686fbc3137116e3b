import { fitHours } from '../drying/fit-hours.ts';
import { windowMaps } from '../drying/windows.ts';
import type { PlannedStep } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Need, Task } from '../model/task.ts';
import { workHours } from '../schedule/work-hours.ts';
import { intersect, unite, type Minute } from '../time/span.ts';
import type { Standing } from './current-plan.ts';

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
export function earlyWindows({ book, tasks, now }: Situation, standing: Standing, until: Minute): EarlyWindow[] {
  const { plan, air, factors } = standing;
  const stepOf = new Map(plan.steps.map((s) => [s.id, s]));
  const hours = workHours(book.shop, now, until);
  const someoneIn = unite(book.shop.hands.flatMap((hand) => [...hours.ofHands([hand.id])]));
  const waiting = tasks.filter((task) => isNext(task, stepOf));
  return waiting.flatMap((task) => {
    const coat = stepOf.get(task.id);
    const start = coat?.spans[0]?.start;
    const laid = task.ways.find((w) => w.name === coat?.way)?.film;
    const [material, room] = [book.materials.get(laid?.material ?? ''), air.get(coat?.room ?? '')];
    if (coat?.window === undefined || start === undefined) return [];
    const { of, opens } = coat.window;
    return task.needs.filter(isWindow).flatMap((need): EarlyWindow[] => {
      const lies = stepOf.get(need.task);
      const film = tasks.find((t) => t.id === need.task)?.ways.find((w) => w.name === lies?.way)?.film;
      const [beneath, series] = [book.materials.get(film?.material ?? ''), air.get(lies?.room ?? '')];
      const end = lies?.spans.at(-1)?.end;
      if (need.task !== of || film === undefined || beneath === undefined || series === undefined) return [];
      if (end === undefined) return [];
      return need.windows.flatMap((window): EarlyWindow[] => {
        if (window.prepTask !== undefined) return [];
        const maps = windowMaps(window, beneath, film, series, factors.get(need.task));
        const [first, last] = [Math.max(now, maps.opens.at(end)), maps.shuts?.at(end)];
        if (last === undefined || last >= Math.min(start, until) || first > last) return [];
        const open = [{ start: first, end: last + 1 }];
        const fit = material === undefined || room === undefined ? open : fitHours(material, room, first, last + 1);
        return intersect(intersect(open, fit), someoneIn)
          .slice(-1)
          .map((span) => ({ coat, film: need.task, shuts: span.end - 1, reopens: opens }));
      });
    });
  });
}

type WindowNeed = Extract<Need, { readonly kind: 'window' }>;

function isWindow(need: Need): need is WindowNeed {
  return need.kind === 'window';
}

/** Is the step still to come, with nothing before it that is? */
function isNext(task: Task, stepOf: ReadonlyMap<string, PlannedStep>): boolean {
  const step = stepOf.get(task.id);
  if (step === undefined || step.done === true || step.atWork === true) return false;
  return task.needs.every((need) => stepOf.get(need.task)?.done === true);
}

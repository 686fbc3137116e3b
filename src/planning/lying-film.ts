import { windowMaps } from '../drying/windows.ts';
import type { Situation } from '../model/situation.ts';
import type { WindowChoice } from '../model/task.ts';
import type { Minute } from '../time/span.ts';
import type { Standing } from './current-plan.ts';

/** When a window over a film that lies opens, and when it shuts, if it does. */
export interface WindowEdges {
  readonly opens: Minute;
  readonly shuts?: Minute;
}

/** By id of the step that laid it, the edges of windows over a film that lies; undefined where it does not, or is unknown. */
export function filmsThatLie(
  { book, tasks }: Situation,
  { plan, air, factors }: Standing,
): (film: string) => ((window: WindowChoice) => WindowEdges) | undefined {
  const taskOf = new Map(tasks.map((t) => [t.id, t]));
  const stepOf = new Map(plan.steps.map((s) => [s.id, s]));
  return (id) => {
    const lies = stepOf.get(id);
    const film = taskOf.get(id)?.ways.find((w) => w.name === lies?.way)?.film;
    const [material, series] = [book.materials.get(film?.material ?? ''), air.get(lies?.room ?? '')];
    const end = lies?.spans.at(-1)?.end;
    if (lies?.done !== true || film === undefined || end === undefined) return undefined;
    if (material === undefined || series === undefined) return undefined;
    return (window) => {
      const { opens, shuts } = windowMaps(window, material, film, series, factors.get(id));
      return { opens: opens.at(end), ...(shuts && { shuts: shuts.at(end) }) };
    };
  };
}

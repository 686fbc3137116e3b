import type { Book } from './book.ts';
import { preparations } from './expand.ts';
import { filmNeeds } from './film-needs.ts';
import { filmOf, isInLine, sameSection, sectionOf } from './section-tasks.ts';
import type { Need, Task } from './task.ts';

type WindowNeed = Extract<Need, { kind: 'window' }>;

/** What one coat waits for from the film beneath, by what is done between the two now. */
function refreshed(book: Book, tasks: readonly Task[], coat: Task, need: WindowNeed): Need[] {
  const beneath = filmOf(
    book,
    tasks.find((t) => t.id === need.task),
  );
  const own = filmOf(book, coat);
  if (beneath === undefined || own === undefined) return [need];
  const from = tasks.findIndex((t) => t.id === need.task);
  const between = tasks.slice(from + 1, tasks.indexOf(coat)).filter((t) => sameSection(t, coat) && isInLine(t));
  const done = new Set(between.map((t) => t.id));
  return filmNeeds(coat.id, { stage: coat.stage }, own.material, [beneath], () => between).map((found): Need => {
    if (found.kind !== 'window') return found;
    const windows = found.windows.map(({ prepTask, ...window }) =>
      prepTask === undefined || done.has(prepTask) ? window : { ...window, prepTask },
    );
    return { ...found, windows };
  });
}

/**
 * Works out anew which preparations the coats of a section may ask for, after its steps have changed: a step that sanded
 * between two coats may be gone, or a coat be laid once more after it. `settled` tasks are over and ask for nothing.
 */
export function refreshWindows(
  book: Book,
  tasks: readonly Task[],
  like: Task,
  settled: (task: Task) => boolean,
): readonly Task[] {
  const coats = tasks.filter((t) => sameSection(t, like) && !settled(t) && t.needs.some((n) => n.kind === 'window'));
  const fresh = new Map(
    coats.map((coat) => [
      coat.id,
      { ...coat, needs: coat.needs.flatMap((n) => (n.kind === 'window' ? refreshed(book, tasks, coat, n) : [n])) },
    ]),
  );
  const films = tasks.flatMap((t) => filmOf(book, t) ?? []);
  return tasks.flatMap((task) => {
    if (task.onlyFor !== undefined && fresh.has(task.onlyFor)) return [];
    const coat = fresh.get(task.id);
    if (coat === undefined) return [task];
    const chain = coat.needs.filter((n) => n.kind === 'order');
    return [...preparations(coat, films, sectionOf(book, coat), chain), coat];
  });
}

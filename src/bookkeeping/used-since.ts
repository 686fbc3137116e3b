import type { Book } from '../model/book.ts';
import type { Situation } from '../model/situation.ts';
import type { Task } from '../model/task.ts';
import type { Minute } from '../time/span.ts';
import { usesOf, type Use } from './uses.ts';
import { wayNamed } from './work-left.ts';

/** Uses with what the journal says was really taken of the step's own material. */
export function reallyUsed(uses: readonly Use[], task: Task, used: number | undefined): readonly Use[] {
  if (used === undefined || task.material === undefined) return uses;
  const own = uses.find((u) => u.item === task.material);
  const rest = uses.filter((u) => u.item !== task.material);
  return [{ item: task.material, unit: own?.unit ?? 'L', value: used }, ...rest];
}

/** What the steps that ended after `since` have taken, by id of the material or supply. */
export function usedSince(book: Book, { tasks, done }: Situation, since: Minute): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  for (const task of tasks) {
    const step = done.get(task.id);
    if (step === undefined || step.to <= since) continue;
    for (const { item, value = 0 } of reallyUsed(usesOf(book, tasks, task, wayNamed(task, step.way)), task, step.used))
      used.set(item, (used.get(item) ?? 0) + value);
  }
  return used;
}

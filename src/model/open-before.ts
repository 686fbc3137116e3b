import type { Task } from './task.ts';

/** The steps of the same piece that come before `task`, near or far, and are not done; the nearest first. */
export function openBefore(task: Task, tasks: ReadonlyMap<string, Task>, isDone: (id: string) => boolean): Task[] {
  const found = new Set<Task>();
  const look = (one: Task): void => {
    for (const need of one.needs) {
      const before = tasks.get(need.task);
      if (before === undefined || found.has(before) || before.piece !== task.piece) continue;
      if (!isDone(before.id)) found.add(before);
      look(before);
    }
  };
  look(task);
  return [...found];
}

import type { Lag } from '../engine/problem.ts';
import { openBefore } from '../model/open-before.ts';
import type { Task } from '../model/task.ts';
import type { Ground } from './ground.ts';
import { markLags, orderLag, type Source } from './lags.ts';

/**
 * Where `task` was entered as done before steps that should have come first, these still come one after another with the
 * rest of the section: what is yet to be done and waits for `task` waits for them too, and they wait until its film can be moved.
 */
export function overtakenLags(
  ground: Ground,
  task: Task,
  tasks: ReadonlyMap<string, Task>,
  sourceOf: (task: string) => Source | undefined,
): Lag[] {
  const { done, atWork } = ground.situation;
  const film = sourceOf(task.id);
  if (!done.has(task.id) || film === undefined) return [];
  const waits = (t: Task): boolean => !done.has(t.id) && !atWork.has(t.id);
  const after = [...tasks.values()].filter((t) => waits(t) && t.needs.some((need) => need.task === task.id));
  return openBefore(task, tasks, (id) => done.has(id))
    .filter((before) => before.section === task.section && waits(before))
    .flatMap((before) => {
      const own = sourceOf(before.id);
      if (own === undefined) return [];
      const behind = after.flatMap((t) => sourceOf(t.id) ?? []).filter((to) => to.activity !== own.activity);
      return [
        ...markLags(ground, film, 'handle', own.activity),
        ...behind.map((to) => orderLag(own.activity, to.activity, 0)),
      ];
    });
}

import type { Session } from '../model/session.ts';
import { sessionKey } from '../model/session.ts';
import type { Situation } from '../model/situation.ts';

/** The tasks still to come that have another one to share their mixing and wash-up with. */
export function sharingTasks({ tasks, done, atWork }: Situation, sessions: readonly Session[]): Set<string> {
  const alike = new Map<string, Set<string>>();
  for (const task of tasks) {
    if (done.has(task.id) || atWork.has(task.id)) continue;
    for (const way of task.ways) {
      const key = sessionKey(way);
      if (key !== undefined) alike.set(key, (alike.get(key) ?? new Set()).add(task.id));
    }
  }
  const groups = [...alike.values()].filter((group) => group.size > 1);
  const open = sessions.flat().filter((id) => !done.has(id) && !atWork.has(id));
  return new Set([...groups.flatMap((group) => [...group]), ...open]);
}

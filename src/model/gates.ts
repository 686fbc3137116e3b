import type { Situation } from './situation.ts';
import type { Task } from './task.ts';

/** May the old paint of this piece be disturbed? Only after a recorded test that found no lead; one still to come has found nothing. */
export function gateOpen({ leadTests, now }: Pick<Situation, 'leadTests' | 'now'>, piece: string): boolean {
  const test = leadTests.get(piece);
  return test?.found === false && test.at <= now;
}

/**
 * Tasks that no plan may place yet: those behind a closed lead gate, and all that wait for them. Done ones are facts
 * and never held.
 */
export function heldTasks(situation: Pick<Situation, 'tasks' | 'leadTests' | 'done' | 'now'>): ReadonlySet<string> {
  const held = new Set<string>();
  const waiting = new Map<string, string[]>();
  const follow = (first: string, then: string) => waiting.set(first, [...(waiting.get(first) ?? []), then]);
  for (const task of situation.tasks) {
    for (const need of task.needs) follow(need.task, task.id);
    if (task.onlyFor !== undefined) follow(task.onlyFor, task.id);
  }
  const closed = (task: Task) => task.gated && !gateOpen(situation, task.piece);
  const queue = situation.tasks.filter(closed).map((t) => t.id);
  for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
    if (held.has(id) || situation.done.has(id)) continue;
    held.add(id);
    queue.push(...(waiting.get(id) ?? []));
  }
  return held;
}

import type { Plan, PlannedStep } from '../model/plan.ts';
import { partOf } from '../model/session.ts';
import type { SessionPart } from '../model/session-part.ts';
import type { Situation } from '../model/situation.ts';
import type { Task, Way } from '../model/task.ts';
import type { Minute } from '../time/span.ts';

/** A step of the plan that is not done yet, and the way that the plan has chosen for it. */
export interface WorkToDo {
  readonly task: Task;
  readonly way: Way;
  /** Its part in the session that it is laid in; absent where it stands by itself. */
  readonly part?: SessionPart;
  readonly step: PlannedStep;
  readonly start: Minute;
}

/** The way of that name, or the only one there is. */
export function wayNamed(task: Task, name: string | undefined): Way {
  const way = task.ways.find((w) => w.name === name) ?? task.ways[0];
  if (way === undefined) throw new Error(`${task.id} has no way of doing it`);
  return way;
}

/** What is still to be done, in order of start. */
export function workLeft({ tasks, done }: Pick<Situation, 'tasks' | 'done'>, plan: Plan): WorkToDo[] {
  const byId = new Map(tasks.map((t) => [t.id, t]));
  const sessions = (plan.sessions ?? []).map((s) => s.steps);
  return plan.steps.flatMap((step): WorkToDo[] => {
    const task = byId.get(step.id);
    if (task === undefined || done.has(task.id)) return [];
    const part = partOf(sessions, task.id);
    const start = step.spans[0]?.start ?? plan.from;
    return [{ task, way: wayNamed(task, step.way), ...(part && { part }), step, start }];
  });
}

import type { Need, Task } from './task.ts';

/** What a need on a step that is left out becomes, by what that step itself would have waited for. */
function instead(need: Need, skipped: Task): Need[] {
  const order = skipped.needs.filter((n) => n.kind === 'order');
  const films = skipped.needs.filter((n) => n.kind === 'mark' || n.kind === 'window');
  switch (need.kind) {
    case 'within':
      return [];
    case 'order':
      return skipped.needs.map((n) => (n.kind === 'order' ? n : { kind: 'order', task: n.task, waitHours: 0 }));
    case 'mark':
      return [...order, ...films.map((n): Need => ({ kind: 'mark', task: n.task, mark: need.mark }))];
    case 'window':
      return [...order, ...films];
  }
}

/** The tasks without one that is left out: what waited for it now waits for what it would have waited for. */
export function withoutTask(tasks: readonly Task[], skipped: Task): readonly Task[] {
  return tasks
    .filter((t) => t.id !== skipped.id && t.onlyFor !== skipped.id && t.atOnceAfter !== skipped.id)
    .map((task) => {
      if (!task.needs.some((n) => n.task === skipped.id)) return task;
      const needs = task.needs.flatMap((n) => (n.task === skipped.id ? instead(n, skipped) : [n]));
      return { ...task, needs: needs.filter((n, i) => needs.findIndex((m) => sameNeed(m, n)) === i) };
    });
}

function sameNeed(a: Need, b: Need): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

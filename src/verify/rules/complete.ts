import { heldTasks } from '../../model/gates.ts';
import type { PlannedStep } from '../../model/plan.ts';
import type { Minute } from '../../time/span.ts';
import type { Breach } from '../breach.ts';
import { wellFormed } from '../facts.ts';
import type { Ground } from '../ground.ts';

function breach(steps: readonly string[], at: Minute, text: string): Breach {
  return { rule: 'complete', steps, at, text };
}

function counted({ plan, situation, say }: Ground): Breach[] {
  const held = heldTasks(situation);
  const times = new Map<string, number>();
  for (const { id } of plan.steps) times.set(id, (times.get(id) ?? 0) + 1);
  return situation.tasks.flatMap(({ id, onlyFor }) => {
    const count = times.get(id) ?? 0;
    if (count > 1) return [breach([id], plan.from, `${say.step(id)} is planned ${count} times`)];
    const mayMiss = onlyFor !== undefined || held.has(id);
    return count === 1 || mayMiss ? [] : [breach([id], plan.from, `${say.step(id)} is not in the plan`)];
  });
}

function senseless(step: PlannedStep, { tasks, situation, say }: Ground): string[] {
  const task = tasks.get(step.id);
  if (task === undefined) return [`${step.id} is planned, but no piece asks for it`];
  const name = say.step(step.id);
  const found: string[] = [];
  if (!wellFormed(step, situation.done.has(step.id))) found.push(`${name} has spans that overlap or hold no time`);
  if (!task.ways.some((w) => w.name === step.way)) found.push(`${name} is done in the unknown way "${step.way}"`);
  if (!situation.book.shop.stations.some((s) => s.id === step.station))
    found.push(`${name} is at the unknown station "${step.station}"`);
  return found;
}

/** Every task once, save those held by a gate or needed for nothing; nothing unknown; spans that make sense. */
export function planComplete(ground: Ground): Breach[] {
  return [
    ...counted(ground),
    ...ground.plan.steps.flatMap((step) =>
      senseless(step, ground).map((text) => breach([step.id], step.spans[0]?.start ?? ground.plan.from, text)),
    ),
  ];
}

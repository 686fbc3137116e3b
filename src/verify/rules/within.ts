import type { Breach } from '../breach.ts';
import type { Ground } from '../ground.ts';
import { lasting } from '../say.ts';

/** Over by the latest hour: a tape is off again before it leaves its glue behind. */
export function limitsKept({ facts, byId, say }: Ground): Breach[] {
  return facts
    .filter((f) => !f.settled)
    .flatMap((fact) =>
      fact.task.needs.flatMap((need): Breach[] => {
        if (need.kind !== 'within') return [];
        const other = byId.get(need.task);
        if (other === undefined) return [];
        const by = other.end + Math.round(need.hours * 60);
        if (fact.end <= by) return [];
        const text =
          `${say.step(fact.id)} ends ${say.when(fact.end)}, but must be over by ${say.when(by)}, ` +
          `${lasting(by - other.end)} after ${say.step(other.id)} (${need.why}): ${lasting(fact.end - by)} too late`;
        return [{ rule: 'within', steps: [fact.id, other.id], at: fact.end, text }];
      }),
    );
}

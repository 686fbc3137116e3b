import type { Breach } from '../breach.ts';
import { lateMark, type Fact } from '../fact.ts';
import type { Ground } from '../ground.ts';
import { lasting } from '../say.ts';

function tooSoon(fact: Fact, { byId, say }: Ground): Breach[] {
  return fact.task.needs.flatMap((need) => {
    if (need.kind !== 'mark') return [];
    const other = byId.get(need.task);
    if (other === undefined) return [];
    const from = lateMark(other, need.mark);
    if (fact.start >= from) return [];
    const text =
      `${say.step(fact.id)} starts ${say.when(fact.start)}, but ${say.step(other.id)} ` +
      `may still not have reached the mark ${need.mark} before ${say.when(from)}: ` +
      `${lasting(from - fact.start)} too early`;
    return [{ rule: 'wait', steps: [fact.id, other.id], at: fact.start, text }];
  });
}

/** No step before the films beneath have reached the mark it needs, at the slow end of their spread. */
export function waitsKept(ground: Ground): Breach[] {
  return ground.facts.filter((f) => !f.settled).flatMap((fact) => tooSoon(fact, ground));
}

import { potLifeMap } from '../../drying/pot-life.ts';
import type { Breach } from '../breach.ts';
import type { Ground } from '../ground.ts';
import { lasting } from '../say.ts';

/**
 * What is mixed as a step begins, or as the session of a coat begins, is used up while it can still be worked, at the fast
 * end.
 */
export function potLifeKept({ facts, byId, plan, say }: Ground): Breach[] {
  const mixedFor = new Map((plan.sessions ?? []).flatMap(({ steps }) => steps.map((id) => [id, steps[0]])));
  return facts
    .filter((f) => !f.settled)
    .flatMap((fact): Breach[] => {
      const life = fact.laid && potLifeMap(fact.laid.material, fact.laid.air);
      const first = byId.get(mixedFor.get(fact.id) ?? fact.id) ?? fact;
      const until = life?.at(first.start);
      if (until === undefined || fact.end <= until) return [];
      const text =
        `${say.step(first.id)} mixes at ${say.when(first.start)} what can be worked only until ${say.when(until)}, ` +
        `but ends ${say.when(fact.end)}: ${lasting(fact.end - until)} too late`;
      return [{ rule: 'pot-life', steps: [fact.id], at: until, text }];
    });
}

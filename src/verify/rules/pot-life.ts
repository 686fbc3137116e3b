import { potLifeMap } from '../../drying/pot-life.ts';
import type { Breach } from '../breach.ts';
import type { Ground } from '../ground.ts';
import { lasting } from '../say.ts';

/** What is mixed as a step begins is used up while it can still be worked, at the fast end. */
export function potLifeKept({ facts, say }: Ground): Breach[] {
  return facts
    .filter((f) => !f.settled)
    .flatMap((fact): Breach[] => {
      const life = fact.laid && potLifeMap(fact.laid.material, fact.laid.air);
      const until = life?.at(fact.start);
      if (until === undefined || fact.end <= until) return [];
      const text =
        `${say.step(fact.id)} mixes at ${say.when(fact.start)} what can be worked only until ${say.when(until)}, ` +
        `but ends ${say.when(fact.end)}: ${lasting(fact.end - until)} too late`;
      return [{ rule: 'pot-life', steps: [fact.id], at: until, text }];
    });
}

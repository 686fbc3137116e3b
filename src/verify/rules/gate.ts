import type { Breach } from '../breach.ts';
import type { Ground } from '../ground.ts';

/** Nothing that disturbs old paint before the piece's lead test is on record. */
export function gatesKept({ facts, situation, say }: Ground): Breach[] {
  return facts
    .filter((f) => f.task.gated && !f.settled)
    .flatMap((fact): Breach[] => {
      const test = situation.leadTests.get(fact.task.piece);
      if (test !== undefined && test.at <= fact.start) return [];
      const known = test === undefined ? 'none is on record' : `it is on record only from ${say.when(test.at)}`;
      const text =
        `${say.step(fact.id)} starts ${say.when(fact.start)} and disturbs paint that may carry lead, ` +
        `but must wait for the lead test: ${known}`;
      return [{ rule: 'gate', steps: [fact.id], at: fact.start, text }];
    });
}

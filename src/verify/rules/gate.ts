import type { Breach } from '../breach.ts';
import type { Fact } from '../fact.ts';
import type { Ground } from '../ground.ts';

function closed({ task, start }: Fact, { situation, say }: Ground): string | undefined {
  const test = situation.leadTests.get(task.piece);
  if (test === undefined) return 'none is on record';
  if (test.found) return 'it found lead';
  return test.at <= start ? undefined : `it is on record only from ${say.when(test.at)}`;
}

/** Nothing that disturbs old paint before a lead test that found none is on record. */
export function gatesKept(ground: Ground): Breach[] {
  const { facts, say } = ground;
  return facts
    .filter((f) => f.task.gated && !f.settled)
    .flatMap((fact): Breach[] => {
      const why = closed(fact, ground);
      if (why === undefined) return [];
      const text =
        `${say.step(fact.id)} starts ${say.when(fact.start)} and disturbs paint that may carry lead, ` +
        `but waits for a lead test that finds none: ${why}`;
      return [{ rule: 'gate', steps: [fact.id], at: fact.start, text }];
    });
}

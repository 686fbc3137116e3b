import type { DoneStep } from '../../model/situation.ts';
import type { Breach } from '../breach.ts';
import type { Fact } from '../fact.ts';
import type { Ground } from '../ground.ts';

function doneFaults({ start, end, step, station }: Fact, done: DoneStep | undefined, { say }: Ground): string[] {
  if (done === undefined) return step.done === true ? ['is shown as done, but the journal does not say so'] : [];
  const found: string[] = [];
  if (step.done !== true) found.push('is not shown as done, but the journal says so');
  if (start !== done.from || end !== done.to)
    found.push(
      `is planned from ${say.when(start)} to ${say.when(end)}, ` +
        `but was done from ${say.when(done.from)} to ${say.when(done.to)}`,
    );
  if (done.station !== undefined && done.station !== station.id)
    found.push(`is planned at ${station.name}, but was done at ${done.station}`);
  if (done.way !== undefined && done.way !== step.way)
    found.push(`is planned in the way "${step.way}", but was done in the way "${done.way}"`);
  return found;
}

function begunFaults({ start, step }: Fact, begun: number | undefined, { say }: Ground): string[] {
  if (begun === undefined) return step.atWork === true ? ['is shown as begun, but the journal does not say so'] : [];
  const found: string[] = [];
  if (step.atWork !== true) found.push('is not shown as begun, but the journal says so');
  if (start !== begun) found.push(`is planned from ${say.when(start)}, but was begun ${say.when(begun)}`);
  return found;
}

/** What was done is fixed, and shown as done; what was begun keeps its beginning. */
export function journalKept(ground: Ground): Breach[] {
  const { facts, situation, say } = ground;
  return facts.flatMap((fact) =>
    [
      ...doneFaults(fact, situation.done.get(fact.id), ground),
      ...begunFaults(fact, situation.atWork.get(fact.id), ground),
    ].map((fault): Breach => ({
      rule: 'journal',
      steps: [fact.id],
      at: fact.start,
      text: `${say.step(fact.id)} ${fault}`,
    })),
  );
}

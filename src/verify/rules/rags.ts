import type { Breach } from '../breach.ts';
import { isRags, type Fact } from '../fact.ts';
import type { Ground } from '../ground.ts';

function faultsOf(coat: Fact, rags: readonly Fact[], { situation, say }: Ground): string[] {
  const [own] = rags;
  if (own === undefined || rags.length > 1) return ['leaves oily rags, and no step puts them away'];
  // Put away already, whoever did it.
  if (situation.done.has(own.id) || situation.atWork.has(own.id)) return [];
  const found: string[] = [];
  if (own.start !== coat.end)
    found.push(`ends ${say.when(coat.end)} and leaves oily rags, but they are put away at ${say.when(own.start)}`);
  if (own.step.room !== coat.step.room) found.push('leaves oily rags, but they are put away in another room');
  if ([...own.step.hands].sort().join() !== [...coat.step.hands].sort().join())
    found.push('leaves oily rags, but other hands put them away');
  return found;
}

/** Each coat that leaves rags which heat themselves is followed, to the minute and by the same hands, by putting them away. */
export function ragsPutAway(ground: Ground): Breach[] {
  const { facts, situation, say } = ground;
  return facts
    .filter((f) => !isRags(f) && !situation.done.has(f.id))
    .filter((f) => situation.book.materials.get(f.task.material ?? '')?.oilyRags === true)
    .flatMap((coat) => {
      const rags = facts.filter((f) => f.task.atOnceAfter === coat.id);
      return faultsOf(coat, rags, ground).map((fault): Breach => ({
        rule: 'rags',
        steps: [coat.id, ...rags.map((r) => r.id)],
        at: coat.end,
        text: `${say.step(coat.id)} ${fault}`,
      }));
    });
}

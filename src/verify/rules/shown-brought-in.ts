import { broughtIn } from '../brought-in.ts';
import type { Fact } from '../fact.ts';
import { sectionOf, type Ground } from '../ground.ts';
import { firstUnfit } from './air.ts';

/** The coats of a section from `fact` on, until it leaves the room again. */
function coatsHere(fact: Fact, { bySection }: Ground): Fact[] {
  const own = (bySection.get(sectionOf(fact)) ?? [])
    .filter((f) => f.start >= fact.start)
    .sort((a, b) => a.start - b.start);
  const leaves = own.findIndex((f) => f.station.room !== fact.station.room);
  return own.slice(0, leaves < 0 ? undefined : leaves).filter((f) => f.laid !== undefined && !f.settled);
}

/**
 * Work is shown to come from the room where it was, no sooner than it can be carried; and a coat here is still warm enough
 * if it comes as late as is shown.
 */
export function broughtInFaults(fact: Fact, ground: Ground): string[] {
  const { say } = ground;
  const shown = fact.step.broughtIn;
  if (shown === undefined || fact.settled) return [];
  const own = broughtIn(fact, ground);
  if (own?.room !== shown.from) return [`is shown to be brought in from ${shown.from}, where it was not`];
  const soonest = Math.min(own.leaves, fact.start);
  if (shown.at < soonest)
    return [`is shown to be brought in ${say.when(shown.at)}, but cannot be carried before ${say.when(soonest)}`];
  if (shown.at > shown.by || shown.by > fact.start)
    return [
      `is shown to be brought in ${say.when(shown.at)}, and by ${say.when(shown.by)}, which does not go together`,
    ];
  if (shown.by === shown.at) return [];
  const late = coatsHere(fact, ground).flatMap((coat) => {
    const cold = coat.laid && firstUnfit(coat, coat.laid, { ...own, leaves: shown.by });
    return cold === undefined ? [] : [{ coat, why: cold.why }];
  });
  return late
    .slice(0, 1)
    .map(
      ({ coat, why }) =>
        `is shown to be in time if brought in by ${say.when(shown.by)}, but then ${say.step(coat.id)} would find: ${why}`,
    );
}

import { potLifeMap } from '../../src/drying/pot-life.ts';
import type { Minute } from '../../src/time/span.ts';
import type { Tried } from './trial-steps.ts';

/** Longer than this between two coats, and what is in the gun or brush begins to dry: common practice, no source. */
const GAP_MINUTES = 20;

/** What has to be alike in all coats of a session. */
function setting({ laid, way, hands, station }: Tried): string {
  return JSON.stringify([laid?.material.id, [...way.tools].sort(), [...hands].sort(), station.room, station.kind]);
}

function sectionOf({ task }: Tried): string {
  return `${task.piece}/${task.section}`;
}

/** Is it mixed for once and used up in time, with nothing else through the tools, and no two coats of one section? */
function holds(session: readonly Tried[], all: readonly Tried[]): boolean {
  const [first, last] = [session[0], session.at(-1)];
  if (first === undefined || last === undefined) return false;
  if (session.slice(1).some((next, k) => next.start < session[k]!.end || next.start > session[k]!.end + GAP_MINUTES))
    return false;
  if (new Set(session.map(sectionOf)).size < session.length) return false;
  const goodUntil: Minute | undefined = first.laid && potLifeMap(first.laid.material, first.laid.air)?.at(first.start);
  if (goodUntil !== undefined && last.end > goodUntil) return false;
  return !all.some(
    (other) =>
      !session.includes(other) &&
      other.way.tools.some((t) => first.way.tools.includes(t)) &&
      other.start < last.end &&
      first.start < other.end,
  );
}

/**
 * Do the parts that the steps were given make whole sessions: a first coat, any more, and a last, one after another? Two
 * sessions in one setting have the same hands, and so follow one another.
 */
export function sessionsHold(steps: readonly Tried[]): boolean {
  const bySetting = new Map<string, Tried[]>();
  for (const step of steps)
    if (step.part !== undefined) bySetting.set(setting(step), [...(bySetting.get(setting(step)) ?? []), step]);
  return [...bySetting.values()].every((coats) => {
    let open: Tried[] = [];
    for (const coat of coats.sort((a, b) => a.start - b.start)) {
      if ((coat.part === 'first') !== (open.length === 0)) return false;
      open.push(coat);
      if (coat.part !== 'last') continue;
      if (!holds(open, steps)) return false;
      open = [];
    }
    return open.length === 0;
  });
}

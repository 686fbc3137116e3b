import { heldTasks } from '../model/gates.ts';
import type { Plan } from '../model/plan.ts';
import { SESSION_GAP_MINUTES, type Session } from '../model/session.ts';
import type { Situation } from '../model/situation.ts';

/**
 * The sessions of the plan that the shop follows, as far as they can be gone on with: what no plan may place any more is left out; what is done stands first; where
 * it was over too long ago for the next coat to follow, that one is mixed for anew.
 */
export function keptSessions(situation: Situation, kept: Plan | undefined): Session[] {
  const { tasks, done, atWork, now } = situation;
  const held = heldTasks(situation);
  const known = new Set(tasks.map((t) => t.id).filter((id) => !held.has(id)));
  return (kept?.sessions ?? []).flatMap(({ steps }) => {
    const left = steps.filter((id) => known.has(id));
    const over = left.filter((id) => done.has(id)).sort((a, b) => endOf(a) - endOf(b));
    const begun = left.filter((id) => atWork.has(id));
    const open = left.filter((id) => !done.has(id) && !atWork.has(id));
    const last = over.at(-1);
    const goesOn =
      begun.length === 1 || (begun.length === 0 && last !== undefined && endOf(last) + SESSION_GAP_MINUTES >= now);
    const session = goesOn ? [...over, ...begun, ...open] : open;
    return open.length > 0 && session.length > 1 ? [session] : [];
  });

  function endOf(task: string): number {
    return done.get(task)?.to ?? now;
  }
}

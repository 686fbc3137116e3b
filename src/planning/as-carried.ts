import type { Plan, PlannedStep } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Minute } from '../time/span.ts';

/**
 * The situation in which what the plan that the shop follows had carried to another room before now is taken to have been
 * carried then: nobody enters that, and a plan made anew the next morning would else wait again for work that is warm.
 */
export function asCarried(situation: Situation, kept: Plan | undefined): Situation {
  if (kept === undefined) return situation;
  const { done, now } = situation;
  const nextOf = new Map<string, PlannedStep>();
  const lastOf = new Map<string, { readonly step: PlannedStep; readonly to: Minute }>();
  for (const step of kept.steps) {
    if (step.atOnceAfter !== undefined) continue;
    const section = `${step.piece}/${step.section}`;
    const to = done.get(step.id)?.to;
    if (to === undefined) {
      if (!nextOf.has(section)) nextOf.set(section, step);
    } else if (to >= (lastOf.get(section)?.to ?? to)) lastOf.set(section, { step, to });
  }
  const carried = new Map<string, Minute>();
  for (const [section, { broughtIn }] of nextOf) {
    const last = lastOf.get(section)?.step;
    if (last !== undefined && broughtIn?.from === last.room && broughtIn.at <= now) carried.set(last.id, broughtIn.at);
  }
  return { ...situation, carried };
}

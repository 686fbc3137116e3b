import { pacedMinutes } from '../model/paced-work.ts';
import type { PlannedSession, PlannedStep } from '../model/plan.ts';
import { minutesAs, partOf, type Session } from '../model/session.ts';
import type { Situation } from '../model/situation.ts';
import { NEVER } from '../time/time-map.ts';

/** The sessions as the plan shows them, in order of start, each with what it saves against each coat by itself. */
export function plannedSessions(
  { tasks, paces }: Situation,
  steps: readonly PlannedStep[],
  sessions: readonly Session[],
): PlannedSession[] {
  const byId = new Map(steps.map((step) => [step.id, step]));
  const taskOf = new Map(tasks.map((task) => [task.id, task]));
  const saved = (session: Session, id: string): number => {
    const step = byId.get(id);
    const way = taskOf.get(id)?.ways.find((w) => w.name === step?.way);
    if (step === undefined || way === undefined) return 0;
    const alone = pacedMinutes(way.workMinutes, step.hands, paces);
    return alone - pacedMinutes(minutesAs(way, partOf([session], id)), step.hands, paces);
  };
  const startOf = (session: Session) => byId.get(session[0] ?? '')?.spans[0]?.start ?? NEVER;
  return [...sessions]
    .sort((a, b) => startOf(a) - startOf(b))
    .map((session) => ({ steps: session, savedMinutes: session.reduce((sum, id) => sum + saved(session, id), 0) }));
}

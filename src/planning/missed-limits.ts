import { leastMinutes } from '../model/paced-work.ts';
import type { Warning } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Need, Task } from '../model/task.ts';
import type { Minute } from '../time/span.ts';
import { worded } from '../words/worded.ts';

const MINUTES_PER_HOUR = 60;
export const LIMIT_MISSED = 'limit-missed';

type Limit = Extract<Need, { kind: 'within' }>;

/** When what the limit counts from was over; a step at work may be over now. */
function countsFrom({ done, atWork, now }: Situation, limit: Limit): Minute | undefined {
  return done.get(limit.task)?.to ?? (atWork.has(limit.task) ? now : undefined);
}

function isSettled({ done, atWork }: Situation, task: Task): boolean {
  return done.has(task.id) || atWork.has(task.id);
}

/** Tasks still to come whose latest hour has passed, or passes before the work could be over. */
export function missedLimits(situation: Situation): ReadonlySet<string> {
  const { tasks, now, paces } = situation;
  const missed = tasks.filter((task) => {
    if (isSettled(situation, task)) return false;
    const work = Math.min(...task.ways.map((w) => leastMinutes(w.workMinutes, paces)));
    return task.needs.some((need) => {
      if (need.kind !== 'within') return false;
      const from = countsFrom(situation, need);
      return from !== undefined && from + need.hours * MINUTES_PER_HOUR < now + work;
    });
  });
  return new Set(missed.map((t) => t.id));
}

/** Tasks still to come whose latest hour counts from something that is done, and so cannot be put off. */
export function fixedLimits(situation: Situation): ReadonlySet<string> {
  const fixed = situation.tasks.filter(
    (task) =>
      !isSettled(situation, task) &&
      task.needs.some((n) => n.kind === 'within' && countsFrom(situation, n) !== undefined),
  );
  return new Set(fixed.map((t) => t.id));
}

/** The situation with no latest hour, counted from what is done, for these tasks: they come as soon as they can. */
export function withoutLimits(situation: Situation, missed: ReadonlySet<string>): Situation {
  if (missed.size === 0) return situation;
  const tasks = situation.tasks.map((task): Task => {
    if (!missed.has(task.id)) return task;
    const stays = (need: Need) => need.kind !== 'within' || countsFrom(situation, need) === undefined;
    return { ...task, needs: task.needs.filter(stays) };
  });
  return { ...situation, tasks };
}

/** What the user is told of each. */
export function limitWarnings(situation: Situation, missed: ReadonlySet<string>): Warning[] {
  return situation.tasks.flatMap((task): Warning[] => {
    const limit = task.needs.find((n): n is Limit => n.kind === 'within');
    if (!missed.has(task.id) || limit === undefined) return [];
    const piece = situation.book.pieces.find((p) => p.id === task.piece)?.name ?? task.piece;
    const text = worded`${piece}, ${task.section}/${task.step} comes later than it should (${limit.why}): do it as soon as you can, with care.`;
    return [{ code: LIMIT_MISSED, text, step: task.id }];
  });
}

/** The tasks whose latest hour a plan says that it could not keep. */
export function limitsMissedIn(warnings: readonly Warning[]): ReadonlySet<string> {
  return new Set(warnings.flatMap((w) => (w.code === LIMIT_MISSED && w.step !== undefined ? [w.step] : [])));
}

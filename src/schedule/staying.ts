import type { Activity } from '../engine/problem.ts';
import { startOf, type PlannedStep } from '../model/plan.ts';
import { shownLate } from '../model/shown-late.ts';
import { partOf } from '../model/session.ts';
import type { Task } from '../model/task.ts';
import { intersect, type Minute } from '../time/span.ts';
import { ALWAYS } from '../time/time-map.ts';
import type { Ground } from './ground.ts';
import { keptItsPlace, sameManner } from './kept-schedule.ts';
import type { Manner } from './manners.ts';
import { mannersWithPlaces, modeOf, taskActivity } from './task-activity.ts';
import { unmovedBefore } from './unmoved.ts';

interface Laid {
  readonly activity: Activity;
  readonly manners: Manner[];
}

/** Was it begun before all beneath it could be moved? Then it kept the place, whatever its own film does. */
function onWetWork(ground: Ground, task: Task, planned: PlannedStep): boolean {
  return unmovedBefore(ground, task).some((before) => {
    const step = ground.kept.get(before.id);
    const movable = step && shownLate(step, ground.book.materials.get(step.material ?? ''), 'handle');
    return movable !== undefined && movable > startOf(planned);
  });
}

/** The manner in which the step is planned, where the shop still has it. */
function plannedManner(
  ground: Ground,
  task: Task,
  planned: PlannedStep,
  manners: readonly Manner[],
): Manner | undefined {
  const part = partOf(ground.sessions, task.id);
  const next = ground.kept.get(ground.nextOf.get(task.id)?.id ?? '');
  const inPlace = keptItsPlace(planned, next) || onWetWork(ground, task, planned);
  const same = manners.filter((m) => sameManner(m, planned) && m.part === part);
  return same.find((m) => (m.inPlace !== undefined) === inPlace) ?? same[0];
}

/** A step that stays just where, when and as it is planned. */
export function stayingActivity(
  ground: Ground,
  task: Task,
  planned: PlannedStep,
  activityOf: ReadonlyMap<string, number>,
): Laid {
  // Nearly always it is one of those at its place: the others are not thought of in vain.
  const place = ground.placeOfStation(planned.station);
  const there = mannersWithPlaces(ground, task, activityOf, place === undefined ? [] : [place]);
  const manner = plannedManner(ground, task, planned, there) ?? mannersWithPlaces(ground, task, activityOf)[0];
  const manners = manner === undefined ? [] : [manner];
  const start = startOf(planned);
  const modes = manners.map((m) => modeOf(ground, task, m, activityOf, [{ start, end: start + 1 }]));
  return { activity: { name: task.id, modes }, manners };
}

/** A step that may be done in any manner of its way, and begins at `last` at the latest. */
export function soonerActivity(
  ground: Ground,
  task: Task,
  planned: PlannedStep,
  last: Minute,
  activityOf: ReadonlyMap<string, number>,
): Laid {
  const { activity, manners } = taskActivity(ground, task, activityOf, planned.way);
  const upTo = [{ start: ALWAYS, end: last + 1 }];
  const modes = activity.modes.map((mode) => ({ ...mode, starts: intersect(mode.starts ?? upTo, upTo) }));
  return { activity: { ...activity, modes }, manners };
}

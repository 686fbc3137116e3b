import type { PlannedStep } from '../../src/model/plan.ts';
import type { Task } from '../../src/model/task.ts';
import { on, step, task, way } from './fixture.ts';

// Three coats by hand: mixing and set-up 20 min, wash-up 10 min, the coat itself 30 min, figures invented for the test.

export const sprayed = way(60, {
  stations: ['spray', 'rack'],
  tools: ['sprayer'],
  film: { material: 'enamel', thickness: 1 },
  inSession: { first: 50, middle: 30, last: 40 },
});
const coat = (id: string, over: Partial<Task> = {}) => task(id, [sprayed], { stage: 'topcoat', ...over });
export const tasks = {
  top: coat('desk/top/coat'),
  legs: coat('desk/legs/coat'),
  seat: coat('chair/seat/coat'),
  other: task('chair/back/spray', [way(10, { tools: ['sprayer'] })], { stage: 'inspect' }),
};

/** A coat that takes `minutes`, as part of a session or not. */
export function laid(
  of: Task,
  at: number,
  minutes: number,
  station: string,
  over: Partial<PlannedStep> = {},
): PlannedStep {
  return step({ ...of, ways: [{ ...sprayed, workMinutes: minutes }] }, { at, station, over });
}

export const top = laid(tasks.top, on('mon', '08:00'), 50, 'booth');
export const legs = laid(tasks.legs, on('mon', '09:00'), 30, 'booth-2');
export const seat = laid(tasks.seat, on('mon', '09:30'), 40, 'rack');
export const other = step(tasks.other, { at: on('mon', '14:00'), station: 'bench-1' });
export const session = { steps: [top.id, legs.id], savedMinutes: 30 };
export const last = laid(tasks.legs, on('mon', '09:00'), 40, 'booth-2');
export const alone = laid(tasks.seat, on('mon', '13:00'), 60, 'rack');

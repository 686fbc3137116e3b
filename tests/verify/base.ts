import type { Plan, PlannedStep } from '../../src/model/plan.ts';
import type { Need, Task } from '../../src/model/task.ts';
import { enamelWindows, on, planOf, situationOf, step, task, way } from './fixture.ts';

// One plan that keeps every rule, and touches the edge of most: each step starts as early as the step before allows.

const order = (other: string, waitHours = 0): Need => ({ kind: 'order', task: other, waitHours });

const sprayed = {
  name: 'spray',
  stations: ['spray'],
  tools: ['sprayer'],
  skill: 'spray',
  film: { material: 'enamel', thickness: 1 },
} as const;

export const tasks = {
  sand: task('desk/top/sand', [way(60, { tools: ['sander'] })], { dusty: true, mayPause: true, gated: true }),
  coat1: task('desk/top/coat-1', [way(30, sprayed), way(60, { name: 'brush', film: sprayed.film })], {
    stage: 'topcoat',
    coat: 1,
    needs: [order('desk/top/sand')],
  }),
  scuff: task('desk/top/coat-2-scuff', [way(20, { stations: ['bench', 'spray'] })], {
    dusty: true,
    mayPause: true,
    onlyFor: 'desk/top/coat-2',
    needs: [order('desk/top/coat-1'), { kind: 'mark', task: 'desk/top/coat-1', mark: 'handle' }],
  }),
  coat2: task('desk/top/coat-2', [way(30, sprayed)], {
    stage: 'topcoat',
    coat: 2,
    needs: [
      order('desk/top/coat-1'),
      {
        kind: 'window',
        task: 'desk/top/coat-1',
        windows: [enamelWindows.early, { ...enamelWindows.late, prepTask: 'desk/top/coat-2-scuff' }],
      },
    ],
  }),
  inspect: task('desk/top/inspect', [way(10, { stations: ['bench', 'spray'] })], {
    stage: 'inspect',
    needs: [order('desk/top/coat-2', 1), { kind: 'mark', task: 'desk/top/coat-2', mark: 'handle' }],
  }),
  glue: task('desk/legs/glue', [way(15, { tools: ['clamps'], film: { material: 'glue', thickness: 1 } })], {
    stage: 'repair',
  }),
  fill: task('desk/legs/fill', [way(45, { film: { material: 'putty', thickness: 1 } })], {
    stage: 'fill',
    needs: [order('desk/legs/glue'), { kind: 'mark', task: 'desk/legs/glue', mark: 'handle' }],
  }),
  mask: task('desk/legs/mask', [way(30)], {
    stage: 'mask',
    needs: [{ kind: 'mark', task: 'desk/legs/fill', mark: 'sand' }],
  }),
  unmask: task('desk/legs/unmask', [way(30)], {
    stage: 'unmask',
    needs: [
      order('desk/legs/mask'),
      { kind: 'within', task: 'desk/legs/mask', hours: 19, why: 'the tape must be off again by then' },
    ],
  }),
  clamp: task('chair/seat/clamp', [way(15, { tools: ['clamps'], film: { material: 'glue', thickness: 1 } })], {
    stage: 'repair',
  }),
  carve: task('chair/seat/carve', [way(240, { stations: ['rack'] })], {
    dusty: true,
    mayPause: true,
    people: 2,
    needs: [order('chair/seat/clamp'), { kind: 'mark', task: 'chair/seat/clamp', mark: 'handle' }],
  }),
} satisfies Record<string, Task>;

export type Name = keyof typeof tasks;

export const situation = situationOf(Object.values(tasks), {
  leadTests: new Map([['desk', { at: on('mon', '07:30'), found: false }]]),
});

const waited = (other: Name, mark: PlannedStep['after'][number]['mark'], notBefore: number): Partial<PlannedStep> => ({
  after: [{ step: tasks[other].id, ...(mark && { mark }), notBefore }],
});

export const steps: Readonly<Record<Exclude<Name, 'scuff'>, PlannedStep>> = {
  sand: step(tasks.sand, { at: on('mon', '08:00'), station: 'bench-1' }),
  coat1: step(tasks.coat1, {
    at: on('mon', '09:00'),
    station: 'booth',
    over: { holdsStationUntil: on('mon', '14:30'), ...waited('sand', undefined, on('mon', '09:00')) },
  }),
  // Wet until 16:00 + 2 h, safe to move from Tue 01:00.
  coat2: step(tasks.coat2, {
    at: on('mon', '14:30'),
    station: 'booth',
    over: {
      window: { opens: on('mon', '14:30'), shuts: on('tue', '05:30'), of: 'desk/top/coat-1' },
      ...waited('coat1', 'recoat', on('mon', '14:30')),
    },
  }),
  inspect: step(tasks.inspect, {
    at: on('tue', '08:00'),
    station: 'bench-1',
    over: waited('coat2', 'handle', on('tue', '01:00')),
  }),
  // Clamped, and not to be moved, until 11:15.
  glue: step(tasks.glue, { at: on('mon', '09:00'), station: 'bench-2', hands: ['helper'] }),
  // 45 minutes of pot life, used to the last; sanded from Mon 13:30.
  fill: step(tasks.fill, {
    at: on('mon', '11:15'),
    station: 'bench-2',
    hands: ['helper'],
    over: waited('glue', 'handle', on('mon', '11:15')),
  }),
  mask: step(tasks.mask, {
    at: on('mon', '13:30'),
    station: 'bench-1',
    over: waited('fill', 'sand', on('mon', '13:30')),
  }),
  unmask: step(tasks.unmask, { at: on('tue', '08:30'), station: 'bench-1' }),
  clamp: step(tasks.clamp, { at: on('mon', '13:00'), station: 'bench-3', hands: ['friend'] }),
  carve: step(tasks.carve, {
    at: on('mon', '15:15'),
    station: 'rack',
    hands: ['owner', 'friend'],
    over: {
      spans: [
        { start: on('mon', '15:15'), end: on('mon', '17:00') },
        { start: on('tue', '09:00'), end: on('tue', '11:15') },
      ],
      holdsStationUntil: on('tue', '11:15'),
    },
  }),
};

/** The plan with some steps replaced, and the ones set to undefined left out. */
export function planWith(
  changes: Partial<Record<Exclude<Name, 'scuff'>, Partial<PlannedStep> | undefined>> = {},
): Plan {
  return planOf(
    Object.entries(steps).flatMap(([name, original]) => {
      if (!(name in changes)) return [original];
      const change = changes[name as keyof typeof changes];
      return change === undefined ? [] : [{ ...original, ...change }];
    }),
  );
}

import { expect, test } from 'vitest';
import type { PlannedStep } from '../../src/model/plan.ts';
import type { DoneStep } from '../../src/model/situation.ts';
import { verify } from '../../src/verify/verify.ts';
import { evidenceOf, on, planOf, situationOf, step, task, way } from './fixture.ts';

// What was done may have been moved too early, and that is a fact: from then on it stands where it was moved to. The legs
// were glued at bench 2, not to be moved before 10:15, and all the same masked at bench 1.

const tasks = {
  glue: task('desk/legs/glue', [way(15, { film: { material: 'glue', thickness: 1 } })], { stage: 'repair' }),
  mask: task('desk/legs/mask', [way(10)], { stage: 'mask' }),
  look: task('desk/legs/look', [way(10)], { stage: 'inspect' }),
  chair: task('chair/seat/wash', [way(10)], { stage: 'clean' }),
};
const glue = step(tasks.glue, { at: on('mon', '08:00'), station: 'bench-2', over: { done: true } });
const mask = step(tasks.mask, { at: on('mon', '08:20'), station: 'bench-1', over: { done: true } });
const done = new Map<string, DoneStep>([
  [tasks.glue.id, { from: on('mon', '08:00'), to: on('mon', '08:15') }],
  [tasks.mask.id, { from: on('mon', '08:20'), to: on('mon', '08:30') }],
]);
const chair = (at: string, station: string) => step(tasks.chair, { at: on('mon', at), station, hands: ['helper'] });
const look = (at: string, station: string) => step(tasks.look, { at: on('mon', at), station });

function texts(steps: readonly PlannedStep[], of = done): string[] {
  const wanted = Object.values(tasks).filter((t) => steps.some((s) => s.id === t.id));
  const situation = situationOf(wanted, { done: of, now: on('mon', '08:30') });
  return verify(evidenceOf(situation), planOf(steps))
    .filter((b) => b.rule !== 'shown')
    .map((b) => `${b.rule}: ${b.text}`);
}

test('the place that it left is free, the place where it stands now is not before all on it can be moved', () => {
  for (const past of [
    [glue, mask],
    [mask, glue],
  ]) {
    expect(texts([...past, chair('08:30', 'bench-2')])).toEqual([]);
    expect(texts([...past, chair('10:15', 'bench-1')])).toEqual([]);
    expect(texts([...past, chair('10:14', 'bench-1')])).toEqual([
      'capacity: Mon 2027-01-11 10:14: 2 at once on Bench 1, which has room for 1: Chair, seat, wash; Desk, legs, mask',
    ]);
  }
});

test('what comes next is done where it stands now, or once it can be moved', () => {
  expect(texts([glue, mask, look('09:00', 'bench-1')])).toEqual([]);
  expect(texts([glue, mask, look('10:15', 'bench-3')])).toEqual([]);
  expect(texts([glue, mask, look('09:00', 'bench-2')])).toEqual([
    'capacity: Desk, legs, look at Bench 2 starts Mon 2027-01-11 09:00, ' +
      'but Desk, legs, glue is not safe to move from Bench 1 before Mon 2027-01-11 10:15',
  ]);
});

test('what comes next takes its place like anything else', () => {
  expect(texts([glue, mask, look('10:20', 'bench-3'), chair('10:30', 'bench-3')])).toEqual([]);
  expect(texts([glue, mask, look('10:20', 'bench-3'), chair('10:29', 'bench-3')])).toEqual([
    'capacity: Mon 2027-01-11 10:29: 2 at once on Bench 3, which has room for 1: Chair, seat, wash; Desk, legs, look',
  ]);
});

test('the place that it left was its own until then', () => {
  const at = { start: on('mon', '08:18'), end: on('mon', '08:28') };
  const early = { ...chair('08:30', 'bench-2'), spans: [at] };
  expect(texts([glue, mask, early]).filter((t) => t.includes('Bench 2'))).toEqual([
    'capacity: Mon 2027-01-11 08:18: 2 at once on Bench 2, which has room for 1: Chair, seat, wash; Desk, legs, glue',
  ]);
});

test('what is done may have taken no time, but not less', () => {
  const odd = (start: string, end: string): PlannedStep => ({
    ...mask,
    spans: [{ start: on('mon', start), end: on('mon', end) }],
  });
  const of = (start: string, end: string) =>
    new Map([...done, [tasks.mask.id, { from: on('mon', start), to: on('mon', end) }] as const]);
  expect(texts([glue, odd('08:20', '08:20')], of('08:20', '08:20'))).toEqual([]);
  expect(texts([glue, odd('08:20', '08:19')], of('08:20', '08:19'))).toEqual([
    'complete: Desk, legs, mask has spans that overlap or hold no time',
  ]);
});

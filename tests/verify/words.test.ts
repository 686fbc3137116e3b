import { expect, test } from 'vitest';
import type { Plan } from '../../src/model/plan.ts';
import type { Situation } from '../../src/model/situation.ts';
import type { Evidence } from '../../src/verify/facts.ts';
import { lasting, sayFor } from '../../src/verify/say.ts';
import { verify } from '../../src/verify/verify.ts';
import { NEVER } from '../../src/time/time-map.ts';
import { planWith, situation, steps, tasks } from './base.ts';
import { evidenceOf, on, planOf, shop } from './fixture.ts';
import { airWith, asking, moved } from './support.ts';

const texts = (plan: Plan, of: Situation = situation, over: Partial<Evidence> = {}): string[] =>
  verify(evidenceOf(of, over), plan)
    .filter((b) => b.rule !== 'shown')
    .map((b) => b.text);

test('durations', () => {
  expect([0, 1, 59, 60, 61, 1500].map(lasting)).toEqual(['0 min', '1 min', '59 min', '1 h', '1 h 1 min', '25 h']);
});

test('times on either clock, in the zone of the shop', () => {
  const twelve = sayFor({ ...situation, book: { ...situation.book, shop: { ...shop, clock: 12 } } });
  const times = ['00:05', '01:00', '11:59', '12:00', '13:30', '23:59'].map((clock) => on('tue', clock));
  expect(times.map((t) => sayFor(situation).when(t))).toEqual(
    ['00:05', '01:00', '11:59', '12:00', '13:30', '23:59'].map((clock) => `Tue 2027-01-12 ${clock}`),
  );
  expect(times.map((t) => twelve.when(t).slice('Tue 2027-01-12 '.length))).toEqual([
    '12:05 am',
    '1:00 am',
    '11:59 am',
    '12:00 pm',
    '1:30 pm',
    '11:59 pm',
  ]);
  expect(sayFor(situation).when(on('mon', '09:00'))).toBe('Mon 2027-01-11 09:00');
  expect(sayFor(situation).when(NEVER)).toBe('never');
});

test('steps by the names of piece and section', () => {
  const say = sayFor(asking({ mask: { section: 'whole' } }));
  expect(say.step(tasks.coat2.id)).toBe('Desk, top, coat 2');
  expect(say.step(tasks.scuff.id)).toBe('Desk, top, coat 2 scuff');
  expect(say.step(tasks.mask.id)).toBe('Desk, whole, mask');
  expect(say.step('no/such/step')).toBe('no/such/step');
  const pieces = situation.book.pieces.map((p) => ({
    ...p,
    sections: p.sections.map((s) => ({ ...s, name: `${p.name}'s ${s.name}` })),
  }));
  expect(sayFor({ ...situation, book: { ...situation.book, pieces } }).step(tasks.coat2.id)).toBe(
    "Desk, Desk's top, coat 2",
  );
  expect(say.piece('chair')).toBe('Chair');
  expect(say.piece('stool')).toBe('stool');
});

test('each rule tells which steps, when, and by how much', () => {
  expect(texts(planWith({ coat2: moved('coat2', { at: on('mon', '14:10') }) }))).toEqual([
    'Desk, top, coat 2 starts Mon 2027-01-11 14:10, but Desk, top, coat 1 may be recoated only ' +
      'from Mon 2027-01-11 14:30 until Tue 2027-01-12 05:30, ' +
      'or from Tue 2027-01-12 11:30 after the preparation scuff: 20 min too early',
  ]);
  expect(texts(planWith({ fill: moved('fill', { at: on('mon', '11:10') }) }))).toEqual([
    'Desk, legs, fill starts Mon 2027-01-11 11:10, but Desk, legs, glue may still not have reached the mark handle ' +
      'before Mon 2027-01-11 11:15: 5 min too early',
  ]);
  expect(
    texts(planWith(), asking({ inspect: { needs: [{ kind: 'order', task: tasks.coat2.id, waitHours: 18 }] } })),
  ).toEqual([
    'Desk, top, inspect starts Tue 2027-01-12 08:00, but it comes after Desk, top, coat 2, ' +
      'which ends Mon 2027-01-11 15:00 and 18 h must pass: 1 h too early',
  ]);
  expect(
    texts(planWith(), asking({ glue: { needs: [{ kind: 'order', task: tasks.mask.id, waitHours: 0 }] } })),
  ).toEqual([
    'Desk, legs, glue starts Mon 2027-01-11 09:00, but it comes after Desk, legs, mask, ' +
      'which ends Mon 2027-01-11 14:00: 5 h too early',
  ]);
  expect(texts(planWith(), { ...situation, now: on('mon', '08:30') })).toEqual([
    'Desk, top, sand starts Mon 2027-01-11 08:00, but it is already Mon 2027-01-11 08:30',
  ]);
  expect(texts(planWith(), { ...situation, notBefore: new Map([[tasks.unmask.id, on('wed', '08:00')]]) })).toEqual([
    'Desk, legs, unmask starts Tue 2027-01-12 08:30, but it was put off to Wed 2027-01-13 08:00',
  ]);
  expect(texts(planWith({ unmask: moved('unmask', { at: on('tue', '08:40'), hands: ['helper'] }) }))).toEqual([
    'Desk, legs, unmask ends Tue 2027-01-12 09:10, but must be over by Tue 2027-01-12 09:00, ' +
      '19 h after Desk, legs, mask (the tape must be off again by then): 10 min too late',
  ]);
  expect(texts(planWith({ mask: moved('mask', { station: 'rack', hands: ['ghost'] }) }))).toEqual([
    'Desk, legs, mask at Mon 2027-01-11 13:30 is at Rack, a rack, but needs bench',
    'Desk, legs, mask at Mon 2027-01-11 13:30 is given to ghost, whom the shop does not know',
  ]);
  expect(texts(planWith({ carve: { hands: ['owner'] } }))).toEqual([
    'Chair, seat, carve at Mon 2027-01-11 15:15 has 1 of the 2 hands that it needs',
  ]);
  expect(texts(planWith({ sand: { tools: ['whip', 'sander'] } }))).toEqual([
    'Desk, top, sand at Mon 2027-01-11 08:00 uses whip, a tool that the shop lacks',
    'Desk, top, sand at Mon 2027-01-11 08:00 uses the tools [sander, whip], but needs [sander]',
  ]);
  expect(texts(planWith({ clamp: moved('clamp', { station: 'bench-2' }) }))).toEqual([
    'Mon 2027-01-11 13:00: 2 at once on Bench 2, which has room for 1: Chair, seat, clamp; Desk, legs, fill',
  ]);
  expect(texts(planWith({ coat2: moved('coat2', { station: 'booth-2' }) }))).toEqual([
    'Desk, top, coat 2 at Booth 2 starts Mon 2027-01-11 14:30, but Desk, top, coat 1 is not safe to move ' +
      'from Booth before Mon 2027-01-11 19:30',
  ]);
  expect(texts(planWith({ inspect: moved('inspect', { at: on('tue', '07:50') }) }))).toEqual([
    'Desk, top, inspect goes from Tue 2027-01-12 07:50 to Tue 2027-01-12 08:00, ' +
      'but not all of that is while the shop is open',
    'Desk, top, inspect goes from Tue 2027-01-12 07:50 to Tue 2027-01-12 08:00, ' +
      'but not all of that is while Owner is in',
  ]);
  const damp = airWith('spray-room', on('mon', '16:00'), on('mon', '18:00'), { rhPercent: 85 });
  expect(texts(planWith(), situation, { air: damp })).toEqual([
    'Desk, top, coat 2 starts Mon 2027-01-11 14:30 and minds the air until Mon 2027-01-11 17:00, ' +
      'but Mon 2027-01-11 16:00 85.0 % humidity is above 80 %',
  ]);
  expect(texts(planWith({ glue: moved('glue', { at: on('mon', '08:45') }) }))).toEqual([
    'Desk, top, sand makes dust in Workshop from Mon 2027-01-11 08:00 to Mon 2027-01-11 09:00, ' +
      'but Desk, legs, glue is wet there from Mon 2027-01-11 08:45 to Mon 2027-01-11 11:00',
  ]);
  expect(texts(planWith(), { ...situation, leadTests: new Map([['desk', { at: 0, found: true }]]) })).toEqual([
    'Desk, top, sand starts Mon 2027-01-11 08:00 and disturbs paint that may carry lead, ' +
      'but waits for a lead test that finds none: it found lead',
  ]);
  expect(texts(planOf([steps.inspect]), { ...situation, tasks: [tasks.inspect, tasks.mask] })).toEqual([
    'Desk, legs, mask is not in the plan',
  ]);
  const done = new Map([[tasks.sand.id, { from: on('mon', '08:00'), to: on('mon', '08:50'), station: 'bench-2' }]]);
  expect(texts(planWith(), { ...situation, done })).toEqual([
    'Desk, top, sand is not shown as done, but the journal says so',
    'Desk, top, sand is planned from Mon 2027-01-11 08:00 to Mon 2027-01-11 09:00, ' +
      'but was done from Mon 2027-01-11 08:00 to Mon 2027-01-11 08:50',
    'Desk, top, sand is planned at Bench 1, but was done at bench-2',
  ]);
});

test('a breach names its steps, the culprit first, and its minute', () => {
  const [breach] = verify(evidenceOf(situation), planWith({ glue: moved('glue', { at: on('mon', '08:45') }) }));
  expect(breach).toMatchObject({ rule: 'dust', steps: [tasks.sand.id, tasks.glue.id], at: on('mon', '08:45') });
});

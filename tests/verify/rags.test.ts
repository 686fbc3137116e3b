import { expect, test } from 'vitest';
import { withOilyRags } from '../../src/model/oily-rags.ts';
import type { Material } from '../../src/model/material.ts';
import type { PlannedStep } from '../../src/model/plan.ts';
import { verify } from '../../src/verify/verify.ts';
import { enamel, evidenceOf, on, planOf, situationOf, step, task, way } from './fixture.ts';

// One coat of oil and the step that puts its rags away, checked against what the material says, not against the tasks.
const oil: Material = { ...enamel, id: 'oil', name: 'Oil', family: 'oil', oilyRags: true };
const coat = task('desk/top/oil', [way(30, { film: { material: 'oil', thickness: 1 } })], {
  stage: 'topcoat',
  material: 'oil',
});
const materials = new Map([[oil.id, oil]]);
const [, away = coat] = withOilyRags({ materials }, [coat]);

const coated: PlannedStep = {
  ...step(coat, { at: on('mon', '09:00'), station: 'bench-1' }),
  material: 'oil',
  dry: {
    'dust-free': { early: on('mon', '10:00'), typical: on('mon', '10:30'), late: on('mon', '11:30') },
    touch: { early: on('mon', '10:30'), typical: on('mon', '11:30'), late: on('mon', '12:30') },
    handle: { early: on('mon', '15:30'), typical: on('mon', '17:30'), late: on('mon', '19:30') },
  },
  holdsStationUntil: on('mon', '19:30'),
};
const put = (to: Partial<Parameters<typeof step>[1]> = {}): PlannedStep =>
  step(away, {
    at: on('mon', '09:30'),
    station: 'bench-1',
    ...to,
    over: { atOnceAfter: coat.id, after: [{ step: coat.id, notBefore: on('mon', '09:30') }] },
  });

const base = situationOf([coat, away]);
const situation = { ...base, book: { ...base.book, materials } };
const broken = (steps: readonly PlannedStep[], of = situation) =>
  [...new Set(verify(evidenceOf(of), planOf(steps)).map((b) => b.rule))].filter((r) => r !== 'shown').sort();

test('put away as the coat ends, by the same hands: on a bench that holds one piece, and the coat stands there', () => {
  expect(verify(evidenceOf(situation), planOf([coated, put()]))).toEqual([]);
});
test('later, it breaks the rule', () => {
  expect(broken([coated, put({ at: on('mon', '09:35') })])).toEqual(['rags']);
});
test('by other hands, it breaks the rule', () => {
  expect(broken([coated, put({ hands: ['friend'] })])).toEqual(['rags']);
});
test('in another room, it breaks the rule', () => {
  expect(broken([coated, put({ station: 'booth' })])).toEqual(['rags']);
});
test('left out of the plan, or of what is asked for, it breaks the rule', () => {
  expect(broken([coated])).toEqual(['complete', 'rags']);
  expect(broken([coated], { ...situation, tasks: [coat] })).toEqual(['rags']);
});
test('a coat that is done asks for no minute any more', () => {
  const done = { from: on('mon', '07:00'), to: on('mon', '07:20') };
  const over = { ...situation, done: new Map([[coat.id, done]]) };
  const laid = { ...step(coat, { at: done.from, station: 'bench-1' }), spans: [{ start: done.from, end: done.to }] };
  expect(broken([{ ...laid, done: true }, put({ at: on('mon', '08:00') })], over)).toEqual([]);
});

const texts = (steps: readonly PlannedStep[], of = situation) =>
  verify(evidenceOf(of), planOf(steps))
    .filter((b) => b.rule === 'rags')
    .map((b) => [b.steps, b.at, b.text]);
const end = on('mon', '09:30');

test('each fault with its words', () => {
  const says = (text: string) => [[[coat.id, away.id], end, `Desk, top, oil ${text}`]];
  expect(texts([coated])).toEqual([[[coat.id], end, 'Desk, top, oil leaves oily rags, and no step puts them away']]);
  expect(texts([coated, put({ at: on('mon', '09:35') })])).toEqual(
    says('ends Mon 2027-01-11 09:30 and leaves oily rags, but they are put away at Mon 2027-01-11 09:35'),
  );
  expect(texts([coated, put({ hands: ['friend'] })])).toEqual(says('leaves oily rags, but other hands put them away'));
  expect(texts([coated, put({ station: 'booth' })])).toEqual(
    says('leaves oily rags, but they are put away in another room'),
  );
});
test('the same two hands, in whatever order they are named', () => {
  const two = { ...coated, hands: ['owner', 'friend'] };
  expect(texts([two, put({ hands: ['friend', 'owner'] })])).toEqual([]);
  expect(texts([two, put({ hands: ['owner', 'friend'] })])).toEqual([]);
  expect(texts([two, put({ hands: ['owner'] })])).toHaveLength(1);
});
test('put away twice is not put away', () => {
  const again = { ...away, id: `${away.id}-again` };
  const steps = [coated, put(), { ...put(), id: again.id }];
  expect(texts(steps, { ...situation, tasks: [coat, away, again] })).toEqual([
    [[coat.id, away.id, again.id], end, 'Desk, top, oil leaves oily rags, and no step puts them away'],
  ]);
});
test('once they are put away, or it is begun, nobody asks how', () => {
  const late = on('mon', '09:45');
  const putLate = put({ at: late, hands: ['friend'], station: 'booth' });
  const done = new Map([[away.id, { from: late, to: late + 5 }]]);
  expect(texts([coated, { ...putLate, done: true }], { ...situation, done })).toEqual([]);
  const atWork = new Map([[away.id, late]]);
  expect(texts([coated, { ...putLate, atWork: true }], { ...situation, atWork })).toEqual([]);
});
test('a slow hand is given more time for the coat, but not for the rags', () => {
  const paces = new Map([['owner', { factor: 2, deviation: 0, count: 3 }]]);
  const slow = { ...coated, spans: [{ start: on('mon', '09:00'), end: on('mon', '10:00') }] };
  const hours = (minutes: number) => {
    const rags = { ...put(), spans: [{ start: on('mon', '10:00'), end: on('mon', '10:00') + minutes }] };
    return broken([slow, rags], { ...situation, paces }).includes('hours');
  };
  const [way] = away.ways;
  expect(hours(way!.workMinutes)).toBe(false);
  expect(hours(2 * way!.workMinutes)).toBe(true);
});
test('where the piece is away it is the coat that cannot stay, not the rags', () => {
  const pieces = base.book.pieces.map((p) =>
    p.id === 'desk' ? { ...p, away: [{ start: on('mon', '09:31'), end: on('mon', '09:33'), at: 'Upholsterer' }] } : p,
  );
  const of = { ...situation, book: { ...situation.book, pieces } };
  const stays = verify(evidenceOf(of), planOf([coated, put()])).filter((b) => b.rule === 'stay');
  expect(stays.map((b) => b.steps)).toEqual([[coat.id]]);
});

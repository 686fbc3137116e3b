import { expect, test } from 'vitest';
import { verify } from '../../src/verify/verify.ts';
import { evidenceOf, on, planOf, situationOf, step, task, way } from './fixture.ts';

const rules = (...[evidence, plan]: Parameters<typeof verify>) => verify(evidence, plan).map((b) => b.rule);
const enamelled = { film: { material: 'enamel', thickness: 1 } };

test('pieces of work that follow one on the other are in order', () => {
  const sand = task('desk/top/sand', [way(60)], { mayPause: true });
  const spans = (until: string) => [
    { start: on('mon', '08:00'), end: on('mon', until) },
    { start: on('mon', '08:30'), end: on('mon', '09:00') },
  ];
  const planned = step(sand, { at: on('mon', '08:00'), station: 'bench-1' });
  const of = (until: string) => rules(evidenceOf(situationOf([sand])), planOf([{ ...planned, spans: spans(until) }]));
  expect(of('08:30')).toEqual([]);
  expect(of('08:31')).toContain('complete');
});

test('a step is checked by the way in which it is planned', () => {
  const coat = task('desk/top/coat', [way(30, enamelled), way(60, { name: 'brush', ...enamelled })]);
  const brushed = { ...coat, ways: coat.ways.slice(1) };
  const situation = evidenceOf(situationOf([coat]));
  expect(rules(situation, planOf([step(brushed, { at: on('mon', '08:00'), station: 'bench-1' })]))).toEqual([]);
  expect(
    rules(situation, planOf([{ ...step(coat, { at: on('mon', '08:00'), station: 'bench-1' }), way: 'brush' }])),
  ).toEqual(['hours']);
});

test('of a material or an air that nobody knows nothing is said', () => {
  const strange = task('desk/top/coat', [way(30, { film: { material: 'moonshine', thickness: 1 } })]);
  const bare = step(
    { ...strange, ways: [way(30)] },
    { at: on('mon', '08:00'), station: 'bench-1', over: { material: 'moonshine' } },
  );
  expect(rules(evidenceOf(situationOf([strange])), planOf([bare]))).toEqual([]);
  const coat = task('desk/top/coat', [way(30, enamelled)]);
  const noAir = evidenceOf(situationOf([coat]), { air: new Map() });
  expect(rules(noAir, planOf([{ ...bare, material: 'enamel' }]))).toEqual([]);
});

import { expect, test } from 'vitest';
import { verify } from '../../src/verify/verify.ts';
import { evidenceOf, on, planOf, situationOf, step, task, way } from './fixture.ts';

// A hand that takes longer, or less, than the recipe says gets its minutes, to the next five; two go by the slower.

function asks(usual: number, paces: Readonly<Record<string, number>>, given: number): boolean {
  const hands = Object.keys(paces);
  const of = task('desk/top/sand', [way(usual)], { people: hands.length, mayPause: true });
  const known = Object.entries(paces).filter(([, factor]) => factor !== 0);
  const situation = situationOf([of], {
    paces: new Map(known.map(([hand, factor]) => [hand, { factor, deviation: 0, count: 3 }])),
  });
  const planned = step({ ...of, ways: [way(given)] }, { at: on('mon', '08:00'), station: 'bench-1', hands });
  return !verify(evidenceOf(situation), planOf([planned])).some((b) => b.rule === 'hours');
}

test.each<[usual: number, paces: Readonly<Record<string, number>>, needs: number]>([
  [60, { owner: 1.5 }, 90],
  [30, { owner: 1.25 }, 40],
  [50, { owner: 1.1 }, 55],
  [10, { owner: 0.3 }, 5],
  [2, { owner: 0.1 }, 5],
  [60, { owner: 0.5 }, 30],
  [42, { owner: 1 }, 42],
  [42, { owner: 0 }, 42],
  [60, { owner: 0.5, friend: 1.5 }, 90],
  [60, { owner: 0.5, friend: 0 }, 60],
  [60, { owner: 1.5, friend: 0.5 }, 90],
])('%d min at the pace %j take %d min', (usual, paces, needs) => {
  for (const minutes of [needs - 1, needs, needs + 1, needs + 5])
    expect([minutes, asks(usual, paces, minutes)]).toEqual([minutes, minutes === needs]);
});

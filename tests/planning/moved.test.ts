import { expect, test } from 'vitest';
import type { Deed } from '../../src/model/journal.ts';
import type { Plan } from '../../src/model/plan.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { type Move, movesOf } from '../../src/planning/moved.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import type { Minute } from '../../src/time/span.ts';
import { COAT_1, COAT_2, filmBook, start } from './film-book.ts';

const HOUR = 60;

function planAt(now: Minute, deeds: readonly (readonly [Minute, Deed])[], kept?: Plan) {
  const journal = deeds.map(([at, deed], i) => ({ number: i + 1, at, deed }));
  const situation = situationOf(filmBook({ journal }), now);
  const made = makePlan(situation, { seed: 1, steps: 200, ...(kept && { kept }) });
  if (made.kind !== 'plan') throw new Error(made.kind);
  return { ...made, situation };
}

const first = planAt(start, []).plan;
const second = first.steps.find((s) => s.id === COAT_2)?.spans[0]?.start ?? 0;

function movesAt(now: Minute, deeds: readonly (readonly [Minute, Deed])[]): Move[] {
  return movesOf(first, planAt(now, deeds, first));
}

const done = (from: Minute): readonly [Minute, Deed] => [
  from + HOUR,
  { kind: 'done', task: COAT_1, from, to: from + HOUR },
];

test('all as planned: nothing moves', () => {
  expect(movesOf(first, planAt(start, [], first))).toEqual([]);
  expect(movesAt(start + HOUR, [done(start)])).toEqual([]);
});

test('a coat laid late moves the next one as much, and is named', () => {
  const [move] = movesAt(start + 4 * HOUR, [done(start + 3 * HOUR)]);
  expect(move?.step.id).toBe(COAT_2);
  expect([move?.from, move?.to]).toEqual([second, second + 3 * HOUR]);
  expect(move?.cause).toEqual({ kind: 'done-late', step: COAT_1, minutes: 3 * HOUR });
});

test('a step put off, one not begun, and a film that is slower are told as what they are', () => {
  const until = second + 2 * HOUR;
  const putOff = movesAt(start + HOUR, [done(start), [start + HOUR, { kind: 'slipped', task: COAT_2, until }]]);
  expect(putOff.map((m) => [m.step.id, m.to, m.cause])).toEqual([
    [COAT_2, until, { kind: 'put-off', step: COAT_2, until }],
  ]);
  const idle = movesAt(start + 2 * HOUR, []);
  expect(idle.map((m) => [m.step.id, m.cause])).toEqual([
    [COAT_1, { kind: 'not-begun', step: COAT_1 }],
    [COAT_2, { kind: 'not-begun', step: COAT_1 }],
  ]);
  const tacky: readonly [Minute, Deed] = [start + 4 * HOUR, { kind: 'seen', task: COAT_1, sighting: 'tacky' }];
  const [slower] = movesAt(start + 4 * HOUR, [done(start), tacky]);
  expect(slower?.step.id).toBe(COAT_2);
  expect(slower?.cause.kind).toBe('slower');
});

test('what is done early moves nothing; a step that comes later is never put down to something that came sooner', () => {
  const early: readonly [Minute, Deed] = [
    start + HOUR / 2,
    { kind: 'done', task: COAT_1, from: start - HOUR, to: start - HOUR / 2 },
  ];
  expect(movesAt(start + HOUR / 2, [early])).toEqual([]);
  const until = second + 5 * HOUR;
  const [later] = movesAt(start + HOUR / 2, [early, [start + HOUR / 2, { kind: 'slipped', task: COAT_2, until }]]);
  expect(later?.cause).toEqual({ kind: 'put-off', step: COAT_2, until });
});

import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import type { Entry } from '../../src/model/journal.ts';
import { makePlan } from '../../src/planning/make-plan.ts';
import { pacesOf } from '../../src/planning/paces.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { verify } from '../../src/verify/verify.ts';
import { filmBook, COAT_1, COAT_2, start } from './film-book.ts';

const PLANNED = 60;

type Known = Pick<Extract<Entry['deed'], { kind: 'done' }>, 'hands' | 'timed'>;

function journal(minutes: number, known: Known = { hands: ['owner'], timed: true }): Entry[] {
  const to = start + minutes;
  const deed = { kind: 'done', task: COAT_1, from: start, to, ...known } as const;
  return [{ number: 1, at: to, deed }];
}

function paceAfter(minutes: number) {
  return situationOf(filmBook({ journal: journal(minutes) }), start + minutes).paces.get('owner');
}

test('one job that took half as long again moves the pace part of the way, by the rule that precisions add', () => {
  // textbook: prior 0.25, one job off by 0.35: a share of 0.338 of the logarithm; to a twentieth
  const share = 1 / 0.35 ** 2 / (1 / 0.25 ** 2 + 1 / 0.35 ** 2);
  expect(paceAfter(90)?.factor).toBeCloseTo(Math.round(20 * 1.5 ** share) / 20, 9);
  expect(paceAfter(90)?.count).toBe(1);
});

test('however long it took, the pace stays within half and double', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 100_000 }), (minutes) => {
      const factor = paceAfter(minutes)?.factor ?? 1;
      expect(factor).toBeGreaterThanOrEqual(0.5);
      expect(factor).toBeLessThanOrEqual(2);
    }),
    { numRuns: 60 },
  );
});

test('nothing is learned from times that nobody stated, or from nobody', () => {
  const paces = (known?: Known) => situationOf(filmBook({ journal: journal(90, known) }), start + 90).paces.size;
  expect(paces()).toBe(1);
  expect(paces({ hands: ['owner'] })).toBe(0);
  expect(paces({ timed: true })).toBe(0);
});

test('work that pauses overnight counts the hours in which the shop is open', () => {
  const book = filmBook({});
  const [first, ...rest] = situationOf(book, start).tasks;
  if (first === undefined) throw new Error('no task');
  const tasks = [{ ...first, mayPause: true }, ...rest];
  // open from 06:00 to 22:00: from 21:30 to 06:30 there is one hour of work, as planned
  const from = start + (21.5 - 8) * 60;
  const done = new Map([[COAT_1, { from, to: from + 9 * 60, hands: ['owner'], timed: true as const }]]);
  expect(pacesOf(book.shop, { tasks, done }).get('owner')).toMatchObject({ factor: 1, count: 1 });
});

test('the next step of a slow hand is planned longer, and the verifier asks for just that', () => {
  const situation = situationOf(filmBook({ journal: journal(100) }), start + 100);
  const factor = situation.paces.get('owner')?.factor ?? 1;
  expect(factor).toBeGreaterThan(1);
  const made = makePlan(situation, { seed: 1, steps: 200 });
  if (made.kind !== 'plan') throw new Error('no plan');
  const coat = made.plan.steps.find((s) => s.id === COAT_2);
  const [span] = coat?.spans ?? [];
  if (coat === undefined || span === undefined) throw new Error('no second coat');
  expect(span.end - span.start).toBe(5 * Math.ceil((PLANNED * factor) / 5 - 1e-9));
  const evidence = { situation, air: made.air, factors: made.factors };
  expect(verify(evidence, made.plan)).toEqual([]);
  const short = { ...coat, spans: [{ start: span.start, end: span.start + PLANNED }] };
  const hurried = { ...made.plan, steps: made.plan.steps.map((s) => (s === coat ? short : s)) };
  expect(verify(evidence, hurried).map((b) => b.rule)).toContain('hours');
});

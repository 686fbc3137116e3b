import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from '../support/property.ts';
import { expect, test } from 'vitest';
import { planIn, PLAN_FILE, readPlan, writePlan } from '../../src/files/plan-file.ts';
import { marks } from '../../src/model/mark.ts';
import { preparations } from '../../src/model/material.ts';
import type { MarkTimes, Plan, PlannedStep } from '../../src/model/plan.ts';
import { PLAN_FORMAT, planDocument } from '../../src/model/plan-document.ts';
import { stages } from '../../src/model/recipe.ts';
import { isoOf } from '../../src/time/zone.ts';
import { emptyFolder } from './shop-folder.ts';

// From 1971 on; the clock's offset changes in between, twice a year and more.
const minute = fc.integer({ min: 600_000, max: 60_000_000 });
const word = fc.string({ minLength: 1, maxLength: 12 });
const times: fc.Arbitrary<MarkTimes> = fc.record({ early: minute, typical: minute, late: minute });
const spans = fc.array(fc.record({ start: minute, end: minute }), { minLength: 1, maxLength: 3 });
const mark = fc.constantFrom(...marks);
const some = <T extends string>(keys: readonly T[], value: fc.Arbitrary<MarkTimes>) =>
  fc.dictionary(fc.constantFrom(...keys), value, { noNullPrototype: true }) as fc.Arbitrary<
    Partial<Record<T, MarkTimes>>
  >;

const step = fc.record(
  {
    id: word,
    piece: word,
    section: word,
    step: word,
    title: fc.string(),
    stage: fc.constantFrom(...stages),
    coat: fc.integer({ min: 1, max: 9 }),
    material: word,
    way: fc.string({ maxLength: 5 }),
    room: word,
    station: word,
    hands: fc.array(word, { maxLength: 2 }),
    tools: fc.array(word, { maxLength: 2 }),
    spans,
    holdsStationUntil: minute,
    dry: some(marks, times),
    window: fc.record(
      { opens: minute, shuts: minute, prep: fc.constantFrom(...preparations), of: word },
      { requiredKeys: ['opens', 'of'] },
    ),
    after: fc.array(fc.record({ step: word, mark, notBefore: minute }, { requiredKeys: ['step', 'notBefore'] }), {
      maxLength: 3,
    }),
    done: fc.constant(true as const),
    atWork: fc.constant(true as const),
  },
  {
    requiredKeys: [
      'id',
      'piece',
      'section',
      'step',
      'title',
      'stage',
      'way',
      'room',
      'station',
      'hands',
      'tools',
      'spans',
      'holdsStationUntil',
      'after',
    ],
  },
) as fc.Arbitrary<PlannedStep>;

const ready = fc.record({
  typical: minute,
  safe: minute,
  chance: fc.double({ min: 0, max: 1, noNaN: true }).map(Math.abs),
});
const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((n) => n + 0);

const plan = fc.record({
  madeAt: minute,
  timeZone: fc.constantFrom('UTC', 'Europe/Dublin', 'America/St_Johns', 'Australia/Lord_Howe'),
  from: minute,
  to: minute,
  pieces: fc.array(
    fc.record(
      {
        id: word,
        name: fc.string(),
        wantedBy: minute,
        lateHours: number,
        ready: fc.dictionary(fc.constantFrom(...marks, 'listed', 'handedOver'), ready, { noNullPrototype: true }),
      },
      { requiredKeys: ['id', 'name', 'lateHours', 'ready'] },
    ),
    { maxLength: 3 },
  ),
  steps: fc.array(step, { maxLength: 4 }),
  proof: fc.record({
    objective: fc.array(fc.record({ name: word, value: number, bound: number }), { maxLength: 2 }),
    gapPercent: number,
    proven: fc.boolean(),
    verified: fc.constant(true as const),
    steps: fc.nat(),
  }),
  warnings: fc.array(fc.record({ code: word, text: fc.string(), step: word }, { requiredKeys: ['code', 'text'] }), {
    maxLength: 2,
  }),
}) as fc.Arbitrary<Plan>;

test('a plan is read back from its document as it was', () => {
  fc.assert(
    fc.property(plan, (made) => {
      const read = planIn(JSON.stringify(planDocument(made)));
      expect(read.findings).toEqual([]);
      expect(read.plan).toEqual(made);
    }),
    { numRuns: 200 },
  );
});

test('its times are those of the wall clock with its offset', () => {
  fc.assert(
    fc.property(plan, (made) => {
      const document = planDocument(made);
      expect(document.madeAt).toBe(isoOf(made.madeAt, made.timeZone));
      expect(document.steps.map((s) => s.spans[0]?.start)).toEqual(
        made.steps.map((s) => isoOf(s.spans[0]!.start, made.timeZone)),
      );
    }),
    { numRuns: 50 },
  );
});

const empty: Plan = {
  madeAt: 30_000_000,
  timeZone: 'Europe/Dublin',
  from: 30_000_000,
  to: 30_000_000,
  pieces: [],
  steps: [],
  proof: { objective: [], gapPercent: 0, proven: true, verified: true, steps: 1 },
  warnings: [],
};

test('a plan is kept in the shop, over the one before, and found again', () => {
  const folder = emptyFolder();
  expect(readPlan(folder)).toEqual({ findings: [] });
  writePlan(folder, empty);
  const second = { ...empty, to: 30_001_000 };
  writePlan(folder, second);
  expect(readPlan(folder)).toEqual({ plan: second, findings: [] });
});

test.each<[string, string, string]>([
  ['no JSON', '{', 'bad-plan'],
  ['something else', '[]', 'bad-plan'],
  ['another format', '{"format":"other/1"}', 'bad-plan'],
  ['a newer form', '{"format":"drybench.plan/2"}', 'newer-plan'],
  ['no times', `{"format":"${PLAN_FORMAT}"}`, 'bad-plan'],
  ['a zone that is none', JSON.stringify({ ...planDocument(empty), timeZone: 'Mars/North' }), 'bad-plan'],
  [
    'a plan that was not verified',
    JSON.stringify({ ...planDocument(empty), proof: { ...empty.proof, verified: false } }),
    'bad-plan',
  ],
])('%s is refused', (_, text, code) => {
  const folder = emptyFolder();
  writeFileSync(join(folder, PLAN_FILE), text);
  const read = readPlan(folder);
  expect(read.plan).toBeUndefined();
  expect(read.findings[0]?.code).toBe(code);
});

test('what a later Drybench adds is passed over', () => {
  const read = planIn(
    JSON.stringify({ ...planDocument(empty), colour: 'blue', warnings: [{ code: 'x', text: 'y', more: 1 }] }),
  );
  expect(read.plan).toEqual({ ...empty, warnings: [{ code: 'x', text: 'y' }] });
});

test('a plan of thousands of steps is read, and one that is spoilt in a hostile way is refused', () => {
  const one = fc.sample(step, { numRuns: 1, seed: 1 })[0]!;
  const long = { ...empty, steps: Array.from({ length: 2500 }, () => one) };
  expect(planIn(JSON.stringify(planDocument(long))).plan).toEqual(long);
  const deep = '['.repeat(50_000) + ']'.repeat(50_000);
  for (const text of [
    `{"format":"${PLAN_FORMAT}","steps":${deep}}`,
    `{"format":"${PLAN_FORMAT}","proof":${deep}}`,
    JSON.stringify({ ...planDocument(empty), steps: [{ dry: {} }] }),
    '['.repeat(1_000_001),
    `[${'{},'.repeat(2_000_001)}{}]`,
  ])
    expect(planIn(text)).toMatchObject({ findings: [{ code: 'bad-plan' }] });
  expect(planIn(JSON.stringify({ ...planDocument(empty), more: 'x",[{'.repeat(1_000_000) })).plan).toEqual(empty);
});

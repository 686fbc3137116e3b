import fc from '../support/property.ts';
import { describe, expect, test } from 'vitest';
import { sampleAir, type AirSeries } from '../../src/air/series.ts';
import type { Plan, PlannedStep } from '../../src/model/plan.ts';
import type { Situation } from '../../src/model/situation.ts';
import type { Breach } from '../../src/verify/breach.ts';
import type { Evidence } from '../../src/verify/facts.ts';
import { airAlike } from '../../src/verify/other-air.ts';
import { verify } from '../../src/verify/verify.ts';
import { still } from '../drying/arbitrary.ts';
import { planWith, situation as small, tasks as smallTasks } from './base.ts';
import { evidenceOf, on, planOf, shop, situationOf, step, task, way } from './fixture.ts';

// Beside the small plan that touches the edge of most rules, a seat that is sanded in the one room and coated in the other: what
// it was in the first is still to be felt in the second.

const sprayed = way(30, { stations: ['spray'], film: { material: 'enamel', thickness: 1 } });
const seat = (name: string, ways: Parameters<typeof task>[1]) => task(`chair/seat/${name}`, ways, { thicknessMm: 40 });
const carried = { sand: seat('sand', [way(60)]), coat: seat('coat', [sprayed]) };
const situation = situationOf([...Object.values(smallTasks), ...Object.values(carried)], {
  leadTests: small.leadTests,
});
const plan: Plan = planOf([
  ...planWith().steps,
  step(carried.sand, { at: on('wed', '08:00'), station: 'bench-1' }),
  step(carried.coat, { at: on('wed', '09:30'), station: 'booth' }),
]);

const from = on('mon', '00:00');
const DAY = 1440;

/** A room at 23 °C and 50 %, but for some hours. */
function airOf(odd?: { readonly start: number; readonly hours: number; readonly byK: number }): AirSeries {
  return sampleAir(from, from + 6 * DAY, 15, (minute) => {
    const isOdd = odd !== undefined && minute >= odd.start && minute < odd.start + odd.hours * 60;
    return { tempC: 23 + (isOdd ? odd.byK : 0), rhPercent: 50 };
  });
}

const usual = new Map(shop.rooms.map((r) => [r.id, airOf()]));
const evidence = evidenceOf(situation, { air: usual });

interface Otherwise {
  readonly shifts: readonly { readonly step: number; readonly minutes: number }[];
  readonly left?: number | undefined;
  readonly odd?:
    { readonly room: number; readonly from: number; readonly hours: number; readonly byK: number } | undefined;
  readonly factor?: number | undefined;
  readonly settled?: number | undefined;
  readonly opened: boolean;
}

const stepAt = fc.nat(plan.steps.length - 1);
const otherwise: fc.Arbitrary<Otherwise> = fc.record({
  shifts: fc.array(
    fc.record({
      step: stepAt,
      minutes: fc.oneof(fc.integer({ min: -40, max: 40 }), fc.integer({ min: -300, max: 300 })),
    }),
    { maxLength: 2 },
  ),
  left: fc.option(stepAt, { nil: undefined, freq: 6 }),
  odd: fc.option(
    fc.record({
      room: fc.nat(shop.rooms.length - 1),
      from: fc.integer({ min: 0, max: 70 }),
      hours: fc.integer({ min: 1, max: 30 }),
      byK: fc.constantFrom(-14, -4, 4, 9),
    }),
    { nil: undefined, freq: 2 },
  ),
  factor: fc.option(stepAt, { nil: undefined, freq: 6 }),
  settled: fc.option(stepAt, { nil: undefined, freq: 6 }),
  opened: fc.boolean(),
});

function changedPlan({ shifts, left }: Otherwise): Plan {
  const steps: PlannedStep[] = [...plan.steps];
  for (const { step: k, minutes } of shifts) {
    const spans = steps[k]!.spans.map(({ start, end }) => ({ start: start + minutes, end: end + minutes }));
    steps[k] = { ...steps[k]!, spans };
  }
  return { ...plan, steps: steps.filter((_, k) => k !== left) };
}

function changedEvidence({ odd, factor, settled, opened }: Otherwise): Evidence {
  const done = settled === undefined ? undefined : plan.steps[settled]!;
  const hours = opened
    ? {
        ...shop.opening,
        days: {
          '2027-01-13': [
            { from: 480, to: 530 },
            { from: 560, to: 1020 },
          ],
        },
      }
    : shop.opening;
  const then: Situation = {
    ...situation,
    book: { ...situation.book, shop: { ...shop, opening: hours } },
    ...(done && { done: new Map([[done.id, { from: done.spans[0]!.start, to: done.spans.at(-1)!.end }]]) }),
  };
  const room = odd && shop.rooms[odd.room]!.id;
  const air =
    odd === undefined || room === undefined
      ? usual
      : new Map([...usual, [room, airOf({ start: from + odd.from * 60, hours: odd.hours, byK: odd.byK })]]);
  const factors = factor === undefined ? evidence.factors : new Map([[plan.steps[factor]!.id, 1.5]]);
  return { situation: then, air, factors };
}

const told = (breaches: readonly Breach[]) =>
  breaches.map((b) => `${b.rule} ${b.steps.join()} ${b.at} ${b.text}`).sort();

describe('a plan that has passed before', () => {
  test('passes', () => {
    expect(verify(evidence, plan)).toEqual([]);
    expect(verify(evidence, plan, { passed: { evidence, plan } })).toEqual([]);
  });

  const nothing: Otherwise = { shifts: [], opened: false };
  const each = plan.steps.map((_, k) => k);
  const cases: Readonly<Record<string, readonly Otherwise[]>> = {
    'begun at another time': each.flatMap((k) =>
      [-240, -15, 5, 90].map((minutes) => ({ ...nothing, shifts: [{ step: k, minutes }] })),
    ),
    'left out': each.map((k) => ({ ...nothing, left: k })),
    'seen to dry slowly': each.map((k) => ({ ...nothing, factor: k })),
    done: each.map((k) => ({ ...nothing, settled: k })),
    'in other air': shop.rooms.flatMap((_, room) =>
      [0, 7, 8, 9, 13, 16, 24, 31, 33, 50, 56, 57, 58].flatMap((hour) =>
        [-14, 9].flatMap((byK) => [1, 6].map((hours) => ({ ...nothing, odd: { room, from: hour, hours, byK } }))),
      ),
    ),
    'in a shop that is shut while work should be carried': [
      { ...nothing, opened: true },
      ...[50, 55, 56, 57].map((hour) => ({
        ...nothing,
        opened: true,
        odd: { room: 0, from: hour, hours: 2, byK: -14 },
      })),
    ],
  };

  /** The rules that are broken then; what is told must be the same whether it has passed before or not. */
  function brokenIn(other: Otherwise): readonly string[] {
    const [then, after] = [changedPlan(other), changedEvidence(other)];
    const whole = verify(after, then);
    expect(told(verify(after, then, { passed: { evidence, plan } }))).toEqual(told(whole));
    // What is shown of steps is left out where nobody asks for it; all else is as it was.
    const unshown = verify(after, then, { passed: { evidence, plan }, shown: false });
    expect(told(unshown)).toEqual(told(whole.filter((b) => b.rule !== 'shown' || b.steps.length === 0)));
    return whole.map((b) => b.rule);
  }

  test.each(Object.keys(cases))('%s: what is not looked at again would have been found in order', (name) => {
    const broken = cases[name]!.flatMap(brokenIn);
    expect(broken.length).toBeGreaterThan(0);
    if (name === 'in other air') expect(broken).toEqual(expect.arrayContaining(['air', 'shown', 'wait', 'window']));
  });

  test('and in any other way', () => {
    fc.assert(
      fc.property(otherwise, (other) => void brokenIn(other)),
      { numRuns: 300 },
    );
  });
});

describe('a coat that is as it was, on work that comes in otherwise', () => {
  const cold = new Map([
    ['workshop', still(12, 50)],
    ['spray-room', still(23, 50)],
  ]);
  const wipe = seat('wipe', [way(60, { stations: ['bench', 'spray'] })]);
  const coat = seat('coat', [sprayed]);
  const of = situationOf([wipe, coat]);
  const wiped = (station: string, clock = '08:00') => step(wipe, { at: on('mon', clock), station });
  const coated = step(coat, { at: on('mon', '13:30'), station: 'booth' });
  const held = (then: Situation, air = cold): Evidence => evidenceOf(then, { air });
  const inShop = (over: Partial<typeof shop>): Situation => ({
    ...of,
    book: { ...of.book, shop: { ...shop, ...over } },
  });

  /** Held against the rules by itself and after the other has passed, it breaks the same: the air of the coat among them. */
  function spoilt(
    passed: { situation: Situation; steps: PlannedStep[] },
    then: { situation: Situation; steps: PlannedStep[] },
  ) {
    const before = { evidence: held(passed.situation), plan: planOf(passed.steps) };
    expect(verify(before.evidence, before.plan)).toEqual([]);
    const whole = verify(held(then.situation), planOf(then.steps));
    expect(whole.filter((b) => b.rule === 'air').map((b) => b.steps)).toEqual([[coat.id]]);
    expect(told(verify(held(then.situation), planOf(then.steps), { passed: before }))).toEqual(told(whole));
  }
  const usualSteps = [wiped('bench-1'), coated];

  test('later, since the shop is shut while it should be carried', () => {
    const days = {
      '2027-01-11': [
        { from: 480, to: 530 },
        { from: 790, to: 1020 },
      ],
    };
    spoilt(
      { situation: of, steps: usualSteps },
      { situation: inShop({ opening: { ...shop.opening, days } }), steps: usualSteps },
    );
  });

  test('from a colder room than before', () => {
    const warm = [wiped('booth-2', '10:00'), coated];
    spoilt({ situation: of, steps: warm }, { situation: of, steps: [wiped('bench-1', '12:25'), coated] });
  });

  test('from the same room, which is colder now', () => {
    const warm = new Map([...cold, ['workshop', still(23, 50)]]);
    const soon = step(coat, { at: on('mon', '14:05'), station: 'booth' });
    const before = { evidence: held(of, warm), plan: planOf([wiped('bench-1', '13:00'), soon]) };
    expect(verify(before.evidence, before.plan)).toEqual([]);
    const whole = verify(held(of), before.plan);
    expect(whole.map((b) => b.rule)).toContain('air');
    expect(told(verify(held(of), before.plan, { passed: before }))).toEqual(told(whole));
  });

  test('of another material, and slower to dry', () => {
    const before = { evidence: held(of), plan: planOf(usualSteps) };
    const enamel = of.book.materials.get('enamel')!;
    const materials = new Map([
      ...of.book.materials,
      ['enamel', { ...enamel, limits: { ...enamel.limits!, minTempC: 25 } }],
    ]);
    const then = { ...held({ ...of, book: { ...of.book, materials } }), factors: new Map([[coat.id, 1.5]]) };
    const whole = verify(then, before.plan);
    expect(new Set(whole.map((b) => b.rule))).toEqual(new Set(['air', 'shown']));
    expect(told(verify(then, before.plan, { passed: before }))).toEqual(told(whole));
  });

  test('later from the same room', () => {
    spoilt({ situation: of, steps: usualSteps }, { situation: of, steps: [wiped('bench-1', '12:25'), coated] });
  });

  test('at a station that stands in another room now', () => {
    const stations = shop.stations.map((s) => (s.id === 'booth' ? { ...s, room: 'workshop' } : s));
    const soon = step(coat, { at: on('mon', '13:30'), station: 'booth' });
    const freezing = new Map([...cold, ['workshop', still(5, 50)]]);
    const before = { evidence: evidenceOf(of, { air: freezing }), plan: planOf([wiped('booth-2'), soon]) };
    expect(verify(before.evidence, before.plan)).toEqual([]);
    const then = evidenceOf(inShop({ stations }), { air: freezing });
    const whole = verify(then, before.plan);
    expect(whole.map((b) => b.rule)).toContain('air');
    expect(told(verify(then, before.plan, { passed: before }))).toEqual(told(whole));
  });

  test('that is thicker than was thought', () => {
    const thick = situationOf([wipe, { ...coat, thicknessMm: 400 }]);
    spoilt({ situation: of, steps: usualSteps }, { situation: thick, steps: usualSteps });
  });

  test('that was taken for done: nothing reproaches the past', () => {
    const early = [wiped('bench-1'), step(coat, { at: on('mon', '09:05'), station: 'booth', over: { done: true } })];
    const done = new Map([[coat.id, { from: on('mon', '09:05'), to: on('mon', '09:35') }]]);
    spoilt({ situation: situationOf([wipe, coat], { done }), steps: early }, { situation: of, steps: early });
  });
});

describe('two airs', () => {
  const [a, b] = [airOf(), airOf({ start: from + 2 * DAY, hours: 5, byK: -4 })];
  const differs = { start: from + 2 * DAY - 15, end: from + 2 * DAY + 5 * 60 };

  test('are alike for what is over before they differ, and for what begins when that is forgotten', () => {
    expect(airAlike(a, a, { start: 0, end: 1e9 })).toBe(true);
    expect(airAlike(a, airOf(), { start: 0, end: 1e9 })).toBe(true);
    expect(airAlike(a, b, { start: from, end: differs.start })).toBe(true);
    expect(airAlike(a, b, { start: from, end: differs.start + 1 })).toBe(false);
    expect(airAlike(a, b, { start: differs.end + 2 * DAY, end: 1e9 })).toBe(true);
    expect(airAlike(a, b, { start: differs.end + 2 * DAY - 1, end: differs.end + 3 * DAY })).toBe(false);
    expect(airAlike(a, undefined, { start: from, end: from })).toBe(false);
    expect(airAlike(undefined, a, { start: from, end: from })).toBe(false);
    expect(airAlike(undefined, undefined, { start: from, end: from })).toBe(true);
  });

  test('that differ from the first sample on, or to the last, do so before and after, too', () => {
    const ahead = airOf({ start: from, hours: 1, byK: 4 });
    expect(airAlike(a, ahead, { start: from - 10 * DAY, end: from - 9 * DAY })).toBe(false);
    const behind = airOf({ start: from + 5 * DAY, hours: 99, byK: 4 });
    expect(airAlike(a, behind, { start: from + 60 * DAY, end: from + 61 * DAY })).toBe(false);
  });

  test('of another length, or read more often, are not', () => {
    const other = sampleAir(from, from + 6 * DAY, 30, () => ({ tempC: 23, rhPercent: 50 }));
    const longer = sampleAir(from, from + 7 * DAY, 15, () => ({ tempC: 23, rhPercent: 50 }));
    const later = sampleAir(from + 15, from + 6 * DAY + 15, 15, () => ({ tempC: 23, rhPercent: 50 }));
    const sparse = sampleAir(from, from + 12 * DAY, 30, () => ({ tempC: 23, rhPercent: 50 }));
    for (const air of [other, longer, later, sparse]) expect(airAlike(a, air, { start: from, end: from })).toBe(false);
  });

  test('may differ in humidity alone', () => {
    const damp = sampleAir(from, from + 6 * DAY, 15, (m) => ({ tempC: 23, rhPercent: m === from + DAY ? 60 : 50 }));
    expect(airAlike(a, damp, { start: from, end: from + 2 * DAY })).toBe(false);
  });
});

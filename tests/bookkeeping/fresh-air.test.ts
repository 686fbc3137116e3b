import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { freshAirNeeds, vapoursOn, type Vapour } from '../../src/bookkeeping/fresh-air.ts';
import { demoBook, demoPlan } from '../planning/demo.ts';

const limit = (mgPerM3: number, of = 'mineral spirits') => ({ of, mgPerM3, source: 'made up for the test' });
const vapour = (grams: number, start: number, end: number, mgPerM3: number, room = 'shop'): Vapour => ({
  material: 'paint',
  room,
  grams,
  span: { start, end },
  limit: limit(mgPerM3),
});

/** The air that each minute of an hour needs, added up minute by minute. */
function byMinutes(vapours: readonly Vapour[], from: number): number {
  let sum = 0;
  for (let minute = from; minute < from + 60; minute += 1)
    for (const { grams, span, limit: l } of vapours)
      if (minute >= span.start && minute < span.end) sum += ((grams / (span.end - span.start)) * 1000) / l.mgPerM3;
  return sum;
}

describe('fresh air', () => {
  test('by hand: 154 g in an hour at 350 mg/m³ take 440 m³, four times a room of 110 m³', () => {
    const [need] = freshAirNeeds([vapour(154, 600, 660, 350)], new Map([['shop', 110]]));
    expect(need?.m3PerHour).toBeCloseTo(440, 9);
    expect(need?.timesLimit).toBeCloseTo(4, 9);
    expect(need?.from).toBe(600);
  });

  test('of a mixture the parts of the limits add up: half of one and half of another are the whole', () => {
    const half = [vapour(17.5, 0, 60, 350), { ...vapour(95, 0, 60, 1900), limit: limit(1900, 'ethanol') }];
    const [need] = freshAirNeeds(half, new Map());
    expect(need?.m3PerHour).toBeCloseTo(50 + 50, 9);
    expect(need?.timesLimit).toBeUndefined();
  });

  test('nothing is said where still air would stay at the limit, nor of another room', () => {
    expect(freshAirNeeds([vapour(38.5, 0, 60, 350)], new Map([['shop', 110]]))).toEqual([]);
    const two = freshAirNeeds(
      [vapour(40, 0, 60, 350), vapour(1, 0, 60, 350, 'shed')],
      new Map([
        ['shop', 110],
        ['shed', 60],
      ]),
    );
    expect(two.map((n) => n.room)).toEqual(['shop']);
  });

  test('no hour of the day needs more than the one that is named', () => {
    const anyVapour = fc
      .tuple(
        fc.integer({ min: 1, max: 500 }),
        fc.integer({ min: 0, max: 300 }),
        fc.integer({ min: 60, max: 200 }),
        fc.integer({ min: 20, max: 2000 }),
      )
      .map(([grams, start, length, mg]) => vapour(grams, start, start + length, mg));
    fc.assert(
      fc.property(fc.array(anyVapour, { minLength: 1, maxLength: 4 }), (vapours) => {
        const [need] = freshAirNeeds(vapours, new Map());
        const hours = Array.from({ length: 600 }, (_, i) => byMinutes(vapours, i - 60));
        const most = Math.max(...hours);
        expect(Math.abs((need?.m3PerHour ?? 0) - most)).toBeLessThan(1e-6 * most);
      }),
    );
  });

  test('in the demo: each coat that gives off vapour gives off all of its solvent and thinner, an hour or longer', () => {
    const { plan, situation } = demoPlan(0);
    const all = vapoursOn({ start: plan.from, end: plan.to }, demoBook(), situation.tasks, plan.steps);
    expect(all.length).toBeGreaterThan(10);
    for (const v of all) expect(v.span.end - v.span.start).toBeGreaterThanOrEqual(60);
    // The table's top, 3 m² of hardwax oil: 25 m²/L, 93 % lands, bare wood drinks 15 %, 10 % is lost, 400 g/L.
    const oil = all.filter((v) => v.material === 'hardwax-oil').map((v) => Math.round(v.grams));
    const coat = ((3 / 25 / 0.93) * 400) / 0.9;
    expect(oil).toEqual([Math.round(coat / 0.85), Math.round(coat)]);
  });

  test('in the demo: a stripper gives off vapour, too: the table’s top of 3 m² takes 1.5 L of 700 g/L, against 260 mg/m³', () => {
    const { plan, situation } = demoPlan(0);
    const all = vapoursOn({ start: plan.from, end: plan.to }, demoBook(), situation.tasks, plan.steps);
    const grams = all.filter((v) => v.material === 'stripper').map((v) => Math.round(v.grams));
    expect(grams).toContain(3 * 0.5 * 700);
    const limits = new Set(all.filter((v) => v.material === 'stripper').map((v) => v.limit.mgPerM3));
    expect([...limits]).toEqual([260]);
  });
});

import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { learn, learnDrying, learnPace, observationOf, type Observation } from '../../src/drying/learn.ts';
import { deviates } from '../../src/drying/random.ts';
import { film, hours, madeUp, still, t0 } from './arbitrary.ts';

const seen = (kind: Observation['kind'], ratio: number): Observation => ({ kind, expected: 10, seen: 10 * ratio });
const many = (count: number, ratio: number) => Array.from({ length: count }, () => seen('at', ratio));

describe('what a shop learns', () => {
  it('is nothing from nothing', () => {
    expect(learn([], 0.3)).toMatchObject({ factor: 1, count: 0 });
  });

  it('follows the normal conjugate rule where times are seen exactly (textbook: precisions add)', () => {
    for (const [count, ratio] of [
      [1, 1.4],
      [3, 0.8],
      [20, 1.3],
    ] as const) {
      const prior = 0.3;
      const precision = 1 / prior ** 2 + count / 0.2 ** 2;
      const mean = ((count / 0.2 ** 2) * Math.log(ratio)) / precision;
      const learned = learn(many(count, ratio), prior);
      expect(Math.log(learned.factor)).toBeCloseTo(mean, 2);
      expect(learned.deviation).toBeCloseTo(1 / Math.sqrt(precision), 2);
      expect(learned.count).toBe(count);
    }
  });

  it('shrinks one look towards the sheet and lets many speak', () => {
    const one = learnDrying(hours(10, 7, 14), many(1, 1.5)).factor;
    const twenty = learnDrying(hours(10, 7, 14), many(20, 1.5)).factor;
    expect(one).toBeGreaterThan(1);
    expect(one).toBeLessThan(1.4);
    expect(twenty).toBeGreaterThan(1.45);
  });

  it('moves up on "not yet" late, down on "already" early, and hardly on what was to be expected', () => {
    expect(learn([seen('not-yet', 1.5)], 0.3).factor).toBeGreaterThan(1.1);
    expect(learn([seen('by', 0.6)], 0.3).factor).toBeLessThan(0.9);
    expect(learn([seen('by', 3)], 0.3).factor).toBeCloseTo(1, 2);
    expect(learn([seen('not-yet', 0.2)], 0.3).factor).toBeCloseTo(1, 2);
  });

  it('stays within its bounds, and never breaks, whatever is seen', () => {
    const observation = fc.record({
      kind: fc.constantFrom<Observation['kind']>('at', 'by', 'not-yet'),
      expected: fc.double({ min: 0, max: 1000, noNaN: true }),
      seen: fc.double({ min: 0, max: 1000, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(observation, { maxLength: 60 }), (list) => {
        const { factor, deviation } = learn(list, 0.3);
        expect(factor).toBeGreaterThanOrEqual(0.5);
        expect(factor).toBeLessThanOrEqual(2);
        expect(deviation).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('finds a true factor of 1.3 from fifty looks that only say dry or not yet', () => {
    const random = deviates(9);
    const looks = Array.from({ length: 50 }, (): Observation => {
      const truth = 1.3 * Math.exp(0.2 * random.normal());
      const at = 0.6 + 1.4 * random.uniform();
      return seen(at >= truth ? 'by' : 'not-yet', at);
    });
    expect(Math.abs(learn(looks, 0.3).factor - 1.3)).toBeLessThan(0.13);
  });

  it('learns a hand’s pace the same way', () => {
    // precisions add: prior 0.25, each job off by 0.35
    for (const count of [1, 4, 16]) {
      const share = count / 0.35 ** 2 / (1 / 0.25 ** 2 + count / 0.35 ** 2);
      expect(Math.log(learnPace(many(count, 0.8)).factor)).toBeCloseTo(share * Math.log(0.8), 2);
    }
  });
});

describe('a sighting', () => {
  const coat = madeUp({ mechanism: 'oxidation', marks: { touch: hours(4), handle: hours(24) } });
  const look = (sighting: 'wet' | 'tacky' | 'dry' | 'hard', afterHours: number) =>
    observationOf(coat, film, still(23, 50), t0, { at: t0 + afterHours * 60, sighting });

  it('speaks of a mark, in hours gained in that air', () => {
    expect(look('tacky', 5)).toEqual({ kind: 'not-yet', expected: 4, seen: expect.closeTo(5, 6) as number });
    expect(look('dry', 3)).toEqual({ kind: 'by', expected: 4, seen: expect.closeTo(3, 6) as number });
    expect(look('hard', 20)).toMatchObject({ kind: 'by', expected: 24 });
  });

  it('of a mark that the material does not have, or from before its end, says nothing', () => {
    expect(look('wet', 1)).toBeUndefined();
    expect(look('dry', -1)).toBeUndefined();
  });
});

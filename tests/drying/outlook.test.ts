import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { breaches } from '../../src/drying/air-limits.ts';
import { workingTimes } from '../../src/drying/glue-times.ts';
import { dryingSpeeds, fitOutlook, outlook } from '../../src/drying/outlook.ts';
import { remedied, remedyFor } from '../../src/drying/remedy.ts';
import { dailySwing, hours, madeUp, still, t0, wildAir } from './arbitrary.ts';

const limits = { minTempC: 10, maxTempC: 32, minRhPercent: 20, maxRhPercent: 85, dewMarginK: 3, source: 'test' };
const coat = madeUp({ limits, marks: { touch: hours(1) } });

describe('the outlook of a room', () => {
  it('says speed 1 for everything at 23 °C and 50 %, and half for what doubles every 10 K at 13 °C', () => {
    for (const speed of Object.values(dryingSpeeds({ tempC: 23, rhPercent: 50 }))) expect(speed).toBeCloseTo(1, 9);
    expect(dryingSpeeds({ tempC: 13, rhPercent: 50 }).oxidation).toBeCloseTo(1 / 2.033, 3);
  });

  it('has a row an hour with dew point and wood moisture', () => {
    const rows = outlook(still(20, 65), t0, t0 + 300);
    expect(rows.map((r) => r.minute)).toEqual([0, 60, 120, 180, 240].map((m) => t0 + m));
    expect(rows[0]?.dewPointC).toBeCloseTo(13.227, 2);
    expect(rows[0]?.woodMoisturePercent).toBeCloseTo(11.996, 2);
  });

  it('parts the hours into stretches fit and unfit, with a reason and a remedy for the unfit', () => {
    const stretches = fitOutlook(coat, dailySwing(3, 11, 8, 60), t0, t0 + 3 * 1440);
    expect(stretches.map((s) => s.fit)).toEqual([true, false, true, false, true, false, true]);
    expect(stretches[0]?.start).toBe(t0);
    for (const [i, s] of stretches.entries()) {
      expect(s.why.length > 0).toBe(!s.fit);
      if (i > 0) expect(s.start).toBe(stretches[i - 1]?.end);
    }
    expect(stretches[1]?.remedy?.heatToC).toBeGreaterThanOrEqual(10);
    expect(stretches.at(-1)?.end).toBe(t0 + 3 * 1440);
  });
});

describe('a remedy', () => {
  it('makes its air fit, and half a degree less heat would not', () => {
    const air = fc.record({
      tempC: fc.double({ min: -5, max: 36, noNaN: true }),
      rhPercent: fc.double({ min: 5, max: 100, noNaN: true }),
    });
    fc.assert(
      fc.property(air, (now) => {
        fc.pre(breaches(coat, now).length > 0);
        const remedy = remedyFor(coat, now);
        if (remedy === undefined) return;
        expect(breaches(coat, remedied(now, remedy))).toEqual([]);
        if (remedy.heatToC !== undefined && remedy.dryToRhPercent === undefined && remedy.heatToC - 0.5 > now.tempC)
          expect(breaches(coat, remedied(now, { heatToC: remedy.heatToC - 0.5 }))).not.toEqual([]);
      }),
      { numRuns: 500 },
    );
  });

  it('of a stretch holds in every hour of it', () => {
    fc.assert(
      fc.property(wildAir(0, 30), (series) => {
        for (const { start, end, remedy } of fitOutlook(coat, series, t0, t0 + 2880)) {
          if (remedy === undefined) continue;
          for (const row of outlook(series, start, end)) expect(breaches(coat, remedied(row, remedy))).toEqual([]);
        }
      }),
    );
  });

  it('is heat for the cold, drying for the muggy, and none for the hot', () => {
    expect(remedyFor(coat, { tempC: 6, rhPercent: 70 })).toEqual({ heatToC: 10 });
    expect(remedyFor(coat, { tempC: 31, rhPercent: 95 })).toEqual({ dryToRhPercent: 80 });
    expect(remedyFor(coat, { tempC: 36, rhPercent: 40 })).toBeUndefined();
  });
});

describe('the time a glue leaves', () => {
  const pva = madeUp({ mechanism: 'pva-glue', openTime: hours(5 / 60, 3 / 60, 10 / 60), minFilmTempC: 8 });
  const hide = madeUp({ mechanism: 'hide-glue', openTime: hours(1.5 / 60, 1 / 60, 3 / 60) });

  it('is the fast end of its sheet, shorter in warm dry air and never longer in the cold', () => {
    expect(workingTimes(pva, { tempC: 23, rhPercent: 50 }).openMinutes).toBeCloseTo(3, 9);
    expect(workingTimes(pva, { tempC: 30, rhPercent: 30 }).openMinutes).toBeLessThan(2.5);
    expect(workingTimes(pva, { tempC: 10, rhPercent: 80 }).openMinutes).toBeCloseTo(3, 9);
  });

  it('of hot hide glue is shorter in the cold too, where it gels', () => {
    expect(workingTimes(hide, { tempC: 13, rhPercent: 50 }).openMinutes).toBeCloseTo(0.5, 6);
  });
});

import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { breaches } from '../../src/drying/air-limits.ts';
import { airAt } from '../../src/air/series.ts';
import { applicationStarts } from '../../src/drying/fit-hours.ts';
import { whyUnfit } from '../../src/drying/why-unfit.ts';
import type { Mechanism } from '../../src/model/material.ts';
import { USUAL_THICKNESS_MM } from '../../src/model/piece.ts';
import { covers, subtract } from '../../src/time/span.ts';
import { workingTimes } from '../../src/drying/glue-times.ts';
import { fitMinutes, fitOutlook } from '../../src/drying/fit-stretches.ts';
import { dryingSpeeds, outlook } from '../../src/drying/outlook.ts';
import { remedied, remedyFor } from '../../src/drying/remedy.ts';
import { dailySwing, film, hours, madeUp, still, t0, wildAir } from './arbitrary.ts';

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

describe('the hours shown as fit', () => {
  const keepAbove = { tempC: 10, hours: 24 };
  const anyCoat = fc.record({
    keep: fc.boolean(),
    mechanism: fc.constantFrom<Mechanism>('water', 'oxidation'),
    floor: fc.constantFrom(undefined, 12),
  });
  const coatOf = ({ keep, mechanism, floor }: { keep: boolean; mechanism: Mechanism; floor: number | undefined }) =>
    madeUp({
      mechanism,
      limits: { ...limits, ...(keep && { keepAbove }) },
      ...(floor !== undefined && { minFilmTempC: floor }),
    });
  const [from, to] = [t0 - 100, t0 + 2500];

  it('are those of the planner to the minute: a dab that needs no drying may start just then', () => {
    fc.assert(
      fc.property(wildAir(4, 30), anyCoat, (series, over) => {
        const material = coatOf(over);
        const planned = applicationStarts(material, film, series, 1, from, to, USUAL_THICKNESS_MM);
        const shown = fitOutlook(material, series, from, to).filter((s) => s.fit);
        expect(shown.map(({ start, end }) => ({ start, end }))).toEqual(planned);
      }),
      { numRuns: 200 },
    );
  });

  it('hold every minute at which the planner starts a coat that has to dry', () => {
    fc.assert(
      fc.property(wildAir(4, 30), anyCoat, fc.integer({ min: 1, max: 90 }), (series, over, run) => {
        const material = { ...coatOf(over), marks: { 'dust-free': hours(0.5) } };
        const planned = applicationStarts(material, film, series, run, from, to, USUAL_THICKNESS_MM);
        expect(subtract(planned, fitMinutes(material, series, from, to))).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  it('are those at which nothing forbids it, and every other minute has a reason', () => {
    fc.assert(
      fc.property(wildAir(4, 30), anyCoat, (series, over) => {
        const material = coatOf(over);
        const fit = fitMinutes(material, series, from, to);
        for (let minute = from; minute < to; minute += 7) {
          const forbids = whyUnfit(material, series, minute, USUAL_THICKNESS_MM);
          expect([minute, forbids.length === 0]).toEqual([minute, covers(fit, { start: minute, end: minute + 1 })]);
        }
        for (const s of fitOutlook(material, series, from, to)) expect(s.why.length > 0).toBe(!s.fit);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a remedy', () => {
  // Latex at 10 °C or more for 24 h: Wood Handbook (FPL-GTR-190) ch. 16.
  const latex = madeUp({ limits: { ...limits, keepAbove: { tempC: 10, hours: 24 } } });

  it('against the cold to come says for how long it must stay warm', () => {
    const night = dailySwing(4, 12, 8, 60);
    const ahead = fitOutlook(latex, night, t0, t0 + 1440).find((s) => s.why.some((w) => w.code === 'cold-ahead'));
    expect(ahead?.remedy).toEqual({ heatToC: 10, thenKeep: { tempC: 10, hours: 24 } });
  });

  it('that heats for any other reason says so too, and never heats to less than is to be kept', () => {
    const tolerant = { ...latex, limits: { ...limits, minTempC: 5, keepAbove: { tempC: 12, hours: 24 } } };
    expect(fitOutlook(tolerant, still(4, 50), t0, t0 + 60)[0]?.remedy).toEqual({
      heatToC: 12,
      thenKeep: { tempC: 12, hours: 24 },
    });
  });

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

  it('of a stretch holds in every minute of it', () => {
    fc.assert(
      fc.property(wildAir(0, 30), (series) => {
        for (const { start, end, remedy } of fitOutlook(coat, series, t0, t0 + 2880)) {
          if (remedy === undefined) continue;
          for (let minute = start; minute < end; minute += 1)
            expect(breaches(coat, remedied(airAt(series, minute), remedy))).toEqual([]);
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

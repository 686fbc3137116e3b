import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { rhFromVapour } from '../../src/air/psychrometrics.ts';
import { seriesEnd, type AirSeries } from '../../src/air/series.ts';
import { integrate } from '../../src/drying/dose.ts';
import { reached } from '../../src/drying/dose-map.ts';
import { filmFactor } from '../../src/drying/film-factor.ts';
import { arrhenius } from '../../src/drying/laws/arrhenius.ts';
import { rateLaw } from '../../src/drying/rate-law.ts';
import type { Mark } from '../../src/model/mark.ts';
import type { Material, Mechanism } from '../../src/model/material.ts';
import { NEVER } from '../../src/time/time-map.ts';
import { num, table } from '../support/tables.ts';
import { anyMark, anyMechanism, dailySwing, madeUp, t0, wildAir } from './arbitrary.ts';

const rateOf = (over: Partial<Material>, mark: Mark = 'touch') => rateLaw(madeUp(over), mark).rate;
const temp = fc.double({ min: -15, max: 40, noNaN: true });
const rh = fc.double({ min: 0, max: 100, noNaN: true });
const lawOf = fc
  .tuple(anyMechanism, anyMark, fc.constantFrom(undefined, 5, 10))
  .map(([mechanism, mark, floor]) =>
    rateLaw(madeUp({ mechanism, ...(floor === undefined ? {} : { minFilmTempC: floor }) }), mark),
  );

describe('published multipliers', () => {
  // Arrhenius with R = 8.314462618 J/(mol K) (CODATA 2018), calculated for 23 °C.
  it.each(table('arrhenius'))('of $activation_kj_per_mol kJ/mol', (row) => {
    for (const tempC of [5, 10, 13, 15, 18, 20, 25, 30, 35]) {
      const time = 1 / arrhenius(num(row, 'activation_kj_per_mol'), tempC, 23);
      expect(Math.abs(time - num(row, String(tempC)))).toBeLessThan(0.0006);
    }
  });

  it('doubling every 10 K is about 50 kJ/mol (rule of thumb, calculated: 48.8 from 23 to 13 °C)', () => {
    expect(1 / arrhenius(48.8, 13, 23)).toBeCloseTo(2, 2);
    expect(1 / arrhenius(51.2, 20, 30)).toBeCloseTo(2, 2);
  });

  // Vapour-pressure deficit after psychrolib 1.1.1: the wet stage of a water-borne film.
  it.each(table('water-limits'))('of water at $temp_c °C and $rh_percent %', (row) => {
    const time = 1 / rateOf({}, 'touch')(num(row, 'temp_c'), num(row, 'rh_percent'));
    expect(Math.abs(time - num(row, 'vpd'))).toBeLessThan(0.006);
  });

  it('of water are on the slow side of the wet-bulb model wherever it is colder than the reference', () => {
    const cold = table('water-limits').filter((row) => row['wet_bulb'] !== '' && num(row, 'temp_c') < 23);
    expect(cold.length).toBeGreaterThanOrEqual(8);
    for (const row of cold) expect(num(row, 'vpd')).toBeGreaterThan(num(row, 'wet_bulb'));
  });

  it('of damp on oxidation: none to 70 %, a fifth longer at 85 % (common practice, no source)', () => {
    const rate = rateOf({ mechanism: 'oxidation' });
    expect(rate(23, 70)).toBe(1);
    expect(1 / rate(23, 85)).toBeCloseTo(1.2, 9);
  });
});

describe('any law', () => {
  it('is 1 at the reference air', () => {
    fc.assert(
      fc.property(lawOf, (law) => {
        expect(law.rate(23, 50)).toBeCloseTo(1, 12);
      }),
    );
  });

  it('is finite and never negative', () => {
    fc.assert(
      fc.property(lawOf, temp, rh, (law, t, h) => {
        expect(law.rate(t, h)).toBeGreaterThanOrEqual(0);
        expect(Number.isFinite(law.rate(t, h))).toBe(true);
      }),
    );
  });

  it('never slows as it gets warmer, neither at the same RH nor in the same air heated', () => {
    fc.assert(
      fc.property(lawOf, temp, rh, fc.double({ min: 0, max: 15, noNaN: true }), (law, t, h, by) => {
        fc.pre(!law.key.startsWith('moisture-cure'));
        const before = law.rate(t, h) - 1e-9;
        expect(law.rate(t + by, h)).toBeGreaterThanOrEqual(before);
        const vapour = (h / 100) * (rhFromVapour(t, 1) > 0 ? 100 / rhFromVapour(t, 1) : 0);
        expect(law.rate(t + by, rhFromVapour(t + by, vapour))).toBeGreaterThanOrEqual(before);
      }),
      { numRuns: 1000 },
    );
  });

  it('of moisture cure never slows as it gets warmer at the same RH, or damper', () => {
    const rate = rateOf({ mechanism: 'moisture-cure' });
    fc.assert(
      fc.property(temp, rh, fc.double({ min: 0, max: 15, noNaN: true }), (t, h, by) => {
        expect(rate(t + by, h)).toBeGreaterThanOrEqual(rate(t, h));
        expect(rate(t, Math.min(100, h + by))).toBeGreaterThanOrEqual(rate(t, h));
      }),
    );
  });

  it('but moisture cure is never faster in damper air', () => {
    fc.assert(
      fc.property(lawOf, temp, rh, fc.double({ min: 0, max: 50, noNaN: true }), (law, t, h, by) => {
        fc.pre(!law.key.startsWith('moisture-cure'));
        expect(law.rate(t, Math.min(100, h + by))).toBeLessThanOrEqual(law.rate(t, h) + 1e-12);
      }),
      { numRuns: 1000 },
    );
  });

  it('does not jump: a hundredth of a kelvin or of a percent changes it by little', () => {
    fc.assert(
      fc.property(lawOf, temp, fc.double({ min: 0, max: 99.9, noNaN: true }), (law, t, h) => {
        fc.pre(Math.abs(t) > 0.02);
        // the quarter power of the deficit is steep near saturation, so the bound is wide there
        expect(Math.abs(law.rate(t + 0.01, h) - law.rate(t, h))).toBeLessThan(0.05);
        expect(Math.abs(law.rate(t, h + 0.01) - law.rate(t, h))).toBeLessThan(0.05);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('water', () => {
  const watery: Mechanism[] = ['water', 'pva-glue', 'hide-glue', 'wood-water'];
  it.each(watery)('leaves nothing at saturation: %s', (mechanism) => {
    for (const mark of ['touch', 'sand', 'handle', 'cure'] as const)
      expect(rateOf({ mechanism }, mark)(20, 100)).toBe(0);
  });

  it.each(['water', 'pva-glue'] as const)('forms no film at or below its least temperature: %s', (mechanism) => {
    const rate = rateOf({ mechanism, minFilmTempC: 8 }, 'cure');
    expect(rate(8, 40)).toBe(0);
    expect(rate(3, 40)).toBe(0);
    expect(rate(9, 40)).toBeGreaterThan(0);
  });

  it('governs early marks by humidity more than late ones, and full cure not at all', () => {
    const slowing = (mark: Mark): number => rateOf({}, mark)(20, 50) / rateOf({}, mark)(20, 80);
    expect(slowing('touch')).toBeCloseTo(2.5, 6);
    expect(slowing('sand')).toBeCloseTo(2.5 ** 0.5, 6);
    expect(slowing('handle')).toBeCloseTo(2.5 ** 0.25, 6);
    expect(slowing('cure')).toBe(1);
  });
});

describe('the integral', () => {
  it('changes no mark by more than a minute when its step is cut to one minute', () => {
    const swings = [dailySwing(40, 16, 12, 60), dailySwing(40, 9, 10, 70), dailySwing(40, 22, 6, 50)];
    const marks: [Mark, number][] = [
      ['touch', 1],
      ['sand', 12],
      ['handle', 24],
      ['stack', 144],
      ['cure', 672],
    ];
    let compared = 0;
    for (const air of swings)
      for (const mechanism of [
        'solvent',
        'water',
        'oxidation',
        'two-part',
        'moisture-cure',
        'pva-glue',
        'hide-glue',
        'wood-water',
      ] as const)
        for (const [mark, hours] of marks) {
          const law = rateLaw(madeUp({ mechanism, minFilmTempC: 5 }), mark);
          const [coarse, fine] = [integrate(air, law), integrate(air, law, 1)].map((d) => reached(d, hours));
          for (const start of [0, 451, 999]) {
            const [a, b] = [coarse!.at(t0 + start), fine!.at(t0 + start)];
            if (a === NEVER && b === NEVER) continue;
            expect(Math.abs(a - b)).toBeLessThanOrEqual(1);
            compared += 1;
          }
        }
    expect(compared).toBeGreaterThan(250);
  });

  it('reaches no mark later in air that is warmer all along, whatever the law', () => {
    const warmer = (air: AirSeries, byK: number): AirSeries => ({ ...air, tempC: air.tempC.map((t) => t + byK) });
    fc.assert(
      fc.property(lawOf, wildAir(0, 30), fc.double({ min: 0, max: 8, noNaN: true }), (law, air, byK) => {
        const mark = (of: AirSeries) => reached(integrate(of, law), 6).at(t0 + 30);
        expect(mark(warmer(air, byK))).toBeLessThanOrEqual(mark(air) + 1);
      }),
      { numRuns: 150 },
    );
  });

  it('is the sum of the rates over the minutes, by another road', () => {
    fc.assert(
      fc.property(wildAir(15, 30), fc.constantFrom<Mechanism>('solvent', 'oxidation', 'two-part'), (air, mechanism) => {
        const law = rateLaw(madeUp({ mechanism }), 'sand');
        const dose = integrate(air, law);
        const minutes = Math.min(600, seriesEnd(air) - t0);
        let sum = 0;
        for (let m = 0; m < minutes; m += 1) {
          const at = (m + 0.5) / air.stepMinutes;
          const i = Math.floor(at);
          const mix = (v: Float64Array) => v[i]! + ((v[i + 1] ?? v[i]!) - v[i]!) * (at - i);
          sum += law.rate(mix(air.tempC), mix(air.rhPercent)) / 60;
        }
        // air that jumps by up to 15 K in a quarter of an hour: a percent is all that the steps may lose
        expect(Math.abs(dose.hoursAt(t0 + minutes) / sum - 1)).toBeLessThan(0.01);
      }),
      { numRuns: 200 },
    );
  });
});

describe('film thickness', () => {
  it('counts by its square where something must leave or enter (Fick), and not where it reacts throughout', () => {
    const thick = { material: 'made-up', thickness: 1.5 };
    for (const mechanism of ['solvent', 'water', 'oxidation', 'moisture-cure'] as const)
      expect(filmFactor(madeUp({ mechanism }), thick)).toBeCloseTo(2.25, 9);
    expect(filmFactor(madeUp({ mechanism: 'two-part' }), thick)).toBe(1);
  });

  it('never shortens the hours as a film gets thicker or a fill deeper, and never jumps, whatever the mechanism', () => {
    const size = fc.double({ min: 0.2, max: 6, noNaN: true });
    fc.assert(
      fc.property(anyMechanism, size, size, fc.double({ min: 0, max: 2, noNaN: true }), (mechanism, wet, deep, by) => {
        const material = madeUp({ mechanism, sheetDepthMm: 3 });
        const factor = (thickness: number, depthMm: number) =>
          filmFactor(material, { material: 'f', thickness, depthMm });
        const now = factor(wet, deep);
        expect(factor(wet + by, deep)).toBeGreaterThanOrEqual(now);
        expect(factor(wet, deep + by)).toBeGreaterThanOrEqual(now);
        expect(factor(wet * 1.001, deep * 1.001) / now).toBeLessThan(1.005);
      }),
    );
  });

  it('of a fill counts by depth beyond the sheet, never below it', () => {
    const filler = madeUp({ sheetDepthMm: 3 });
    expect(filmFactor(filler, { material: 'f', thickness: 1, depthMm: 6 })).toBeCloseTo(4, 9);
    expect(filmFactor(filler, { material: 'f', thickness: 1, depthMm: 1 })).toBe(1);
    expect(
      filmFactor(madeUp({ mechanism: 'two-part', sheetDepthMm: 3 }), { material: 'f', thickness: 1, depthMm: 9 }),
    ).toBe(1);
  });
});

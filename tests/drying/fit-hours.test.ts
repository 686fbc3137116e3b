import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airAt } from '../../src/air/series.ts';
import { breaches } from '../../src/drying/air-limits.ts';
import { applicationStarts, fitHours, settledMap } from '../../src/drying/fit-hours.ts';
import { potLifeMap } from '../../src/drying/pot-life.ts';
import { inWords, whyUnfit } from '../../src/drying/why-unfit.ts';
import type { Material } from '../../src/model/material.ts';
import { film, hours, madeUp, still, t0, wildAir } from './arbitrary.ts';

const limits = { minTempC: 10, maxTempC: 32, minRhPercent: 20, maxRhPercent: 85, dewMarginK: 3, source: 'test' };
const coat = (over: Partial<Material> = {}) =>
  madeUp({ mechanism: 'oxidation', limits, marks: { 'dust-free': hours(2, 1, 3) }, ...over });

const minute = fc.integer({ min: t0, max: t0 + 3000 });

describe('hours fit for coating', () => {
  it('are those at which nothing is broken, to the minute', () => {
    fc.assert(
      fc.property(wildAir(0, 36), fc.array(minute, { minLength: 20, maxLength: 20 }), (air, minutes) => {
        const material = coat();
        const spans = fitHours(material, air, t0, t0 + 3000);
        const inside = (m: number) => spans.some((s) => s.start <= m && m < s.end);
        for (const m of minutes.filter((x) => x < t0 + 3000)) {
          const fit = breaches(material, airAt(air, m)).length === 0;
          // between two looks five minutes apart the air may brush a limit and come back unseen
          const steady = [-5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5].every(
            (d) => (breaches(material, airAt(air, m + d)).length === 0) === fit,
          );
          if (steady) expect(inside(m)).toBe(fit);
        }
        for (const s of spans) expect(breaches(material, airAt(air, s.start))).toEqual([]);
      }),
    );
  });

  it('begin at the minute at which the limit is met', () => {
    const air = {
      ...still(0, 50),
      stepMinutes: 600,
      tempC: Float64Array.of(5, 15, 15),
      rhPercent: Float64Array.of(50, 50, 50),
    };
    expect(fitHours(coat(), air, t0, t0 + 1200)).toEqual([{ start: t0 + 300, end: t0 + 1200 }]);
  });
});

describe('starts of a coat', () => {
  it('are those from which the air keeps inside the limits until the slow end of dust-free', () => {
    fc.assert(
      fc.property(wildAir(5, 34), fc.integer({ min: 1, max: 200 }), minute, (air, run, start) => {
        const material = coat();
        const to = t0 + 3000;
        const starts = applicationStarts(material, film, air, run, t0, to);
        const fit = fitHours(material, air, t0, to + 40_000);
        const dustFree = settledMap(material, film, air).at(start + run);
        const keeps = fit.some((s) => s.start <= start && dustFree <= s.end);
        expect(starts.some((s) => s.start <= start && start < s.end)).toBe(keeps && start < to);
      }),
      { numRuns: 500 },
    );
  });

  it('stop before an evening that is too cold: 9 h at 12 °C, then frost', () => {
    const air = {
      ...still(0, 50),
      stepMinutes: 1,
      tempC: Float64Array.from({ length: 1000 }, (_, m) => (m < 540 ? 12 : 5)),
      rhPercent: new Float64Array(1000).fill(50),
    };
    const slow = coat({ activationKJPerMol: 50 });
    const [span] = applicationStarts(slow, film, air, 30, t0, t0 + 540);
    // 3 h slow end at 23 °C take 3 × exp(50000/8.314 × (1/285.15 - 1/296.15)) = 6.57 h at 12 °C
    expect(span?.start).toBe(t0);
    expect(Math.abs((span?.end ?? 0) - (t0 + 540 - 30 - 394))).toBeLessThan(4);
  });

  it('of a two-part coat need a mix that outlives the run', () => {
    const mixed = coat({ mechanism: 'two-part', potLife: hours(1) });
    expect(applicationStarts(mixed, film, still(20, 50), 45, t0, t0 + 600)).toEqual([{ start: t0, end: t0 + 600 }]);
    expect(applicationStarts(mixed, film, still(20, 50), 75, t0, t0 + 600)).toEqual([]);
    expect(potLifeMap(mixed, still(31, 50))!.at(t0) - t0).toBeLessThan(45);
    expect(applicationStarts(mixed, film, still(31, 50), 45, t0, t0 + 600)).toEqual([]);
  });

  it('mind the surface where it is known to be colder than the air', () => {
    expect(applicationStarts(coat(), film, still(20, 65), 10, t0, t0 + 600, () => 14)).toEqual([]);
    expect(applicationStarts(coat(), film, still(20, 65), 10, t0, t0 + 600, () => 17)).toEqual([
      { start: t0, end: t0 + 600 },
    ]);
  });
});

describe('why not', () => {
  const codes = (tempC: number, rhPercent: number, surfaceC?: number, over: Partial<Material> = {}) =>
    breaches(coat(over), { tempC, rhPercent }, surfaceC).map((b) => b.code);

  it.each([
    [8, 50, undefined, ['air-too-cold']],
    [35, 50, undefined, ['air-too-warm']],
    [20, 15, undefined, ['air-too-dry']],
    [20, 84, undefined, ['near-dew-point']],
    [20, 90, 25, ['air-too-damp']],
    [20, 50, 9, ['surface-too-cold', 'near-dew-point']],
    [20, 50, 40, ['surface-too-warm']],
    [20, 50, undefined, []],
  ] as const)('%s °C, %s %%, surface %s: %j', (tempC, rh, surface, expected) => {
    expect(codes(tempC, rh, surface)).toEqual(expected);
  });

  it('says that no film forms, and that soaking air dries nothing water-borne', () => {
    expect(codes(12, 50, undefined, { minFilmTempC: 12 })).toEqual(['film-does-not-form']);
    expect(codes(12, 95, 20, { mechanism: 'water', limits: { ...limits, maxRhPercent: 100 } })).toEqual([
      'will-not-dry',
    ]);
  });

  it('is put in words with the numbers', () => {
    expect(whyUnfit(coat(), still(8, 50), t0).map((u) => u.text)).toEqual(['air at 8.0 °C is colder than 10.0 °C']);
    const all = [
      'air-too-cold',
      'air-too-warm',
      'surface-too-cold',
      'surface-too-warm',
      'air-too-dry',
      'air-too-damp',
      'near-dew-point',
      'film-does-not-form',
      'will-not-dry',
    ] as const;
    const texts = inWords(all.map((code) => ({ code, is: 1, limit: 2 }))).map((u) => u.text);
    expect(new Set(texts).size).toBe(all.length);
  });
});

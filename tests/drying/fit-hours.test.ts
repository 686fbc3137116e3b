import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { airAt } from '../../src/air/series.ts';
import { breaches, brokenIn, brokenThroughout } from '../../src/drying/air-limits.ts';
import { applicationStarts, fitHours, settledMap } from '../../src/drying/fit-hours.ts';
import { potLifeMap } from '../../src/drying/pot-life.ts';
import { inWords, whyUnfit } from '../../src/drying/why-unfit.ts';
import type { Material } from '../../src/model/material.ts';
import { surfaceOf, timeConstantMinutes } from '../../src/drying/surface.ts';
import { intersect } from '../../src/time/span.ts';
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
          expect(inside(m)).toBe(breaches(material, airAt(air, m)).length === 0);
        }
        // the minutes beside every edge, where a look that is not exact would slip
        for (const edge of spans.flatMap((s) => [s.start, s.end]).filter((m) => m > t0 && m < t0 + 2999))
          for (const m of [edge - 1, edge, edge + 1])
            expect(inside(m)).toBe(breaches(material, airAt(air, m)).length === 0);
      }),
      { numRuns: 300 },
    );
  });

  it('leave out a breach of a single minute, which looks apart would miss', () => {
    const at = t0 + 17;
    const air = {
      ...still(0, 50),
      stepMinutes: 1,
      tempC: Float64Array.from({ length: 60 }, (_, k) => (t0 + k === at ? 9.9 : 12)),
      rhPercent: new Float64Array(60).fill(50),
    };
    expect(fitHours(coat(), air, t0, t0 + 50)).toEqual([
      { start: t0, end: at },
      { start: at + 1, end: t0 + 50 },
    ]);
  });

  it('with a thickness go by a surface that lags: a room that warms up is fit later, to the minute', () => {
    fc.assert(
      fc.property(wildAir(0, 30), fc.constantFrom(6, 19, 40), minute, (air, thickness, m) => {
        const material = coat({ minFilmTempC: 5 });
        const spans = fitHours(material, air, t0, t0 + 3000, thickness);
        const inside = spans.some((s) => s.start <= m && m < s.end);
        // by another road: cooling followed in steps of a fifth of a minute from the beginning
        const lag = timeConstantMinutes(thickness);
        let surfaceC = airAt(air, t0).tempC;
        for (let k = 0; k < 5 * (m - t0); k += 1)
          surfaceC += (airAt(air, t0 + (k + 0.5) / 5).tempC - surfaceC) * (1 - Math.exp(-0.2 / lag));
        const off = surfaceOf(air, thickness)(m) - surfaceC;
        expect(Math.abs(off)).toBeLessThan(0.02);
        const [low, high] = [-0.02, 0.02].map((by) => breaches(material, airAt(air, m), surfaceC + by).length === 0);
        if (low === high && m < t0 + 3000) expect(inside).toBe(low);
      }),
      { numRuns: 60 },
    );
  });

  it('are the same whether a day is asked for or all there is', () => {
    const anywhere = fc.integer({ min: t0 - 2000, max: t0 + 6000 });
    fc.assert(
      fc.property(
        wildAir(0, 36),
        fc.constantFrom(0, 19),
        anywhere,
        fc.integer({ min: 0, max: 2880 }),
        (air, thickness, from, minutes) => {
          const material = coat();
          const all = fitHours(material, air, t0 - 10_000, t0 + 20_000, thickness);
          const day = { start: from, end: from + minutes };
          expect(fitHours(material, air, from, day.end, thickness)).toEqual(intersect(all, [day]));
        },
      ),
      { numRuns: 300 },
    );
  });

  it('are the same whatever was asked for before, in whichever order', () => {
    const stretch = fc.record({
      from: fc.integer({ min: t0 - 5000, max: t0 + 6000 }),
      minutes: fc.integer({ min: 2881, max: 6000 }),
    });
    fc.assert(
      fc.property(
        wildAir(0, 36),
        fc.constantFrom(0, 19),
        fc.array(stretch, { minLength: 2, maxLength: 5 }),
        (air, thickness, asked) => {
          const material = coat();
          const all = fitHours(material, { ...air }, t0 - 10_000, t0 + 20_000, thickness);
          for (const { from, minutes } of asked)
            expect(fitHours(material, air, from, from + minutes, thickness)).toEqual(
              intersect(all, [{ start: from, end: from + minutes }]),
            );
        },
      ),
      { numRuns: 200 },
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

describe('hours beside the record, and of other materials', () => {
  const ramp = (temps: readonly number[], stepMinutes = 60) => ({
    ...still(0, 50),
    stepMinutes,
    tempC: Float64Array.from(temps),
    rhPercent: new Float64Array(temps.length).fill(50),
  });
  it('before its first sample and after its last the air stays as it is there', () => {
    const air = ramp([20, 5, 20]);
    const spans = fitHours(coat(), air, t0 - 5000, t0 + 9000);
    expect(spans.map((s) => [s.start - t0, s.end - t0])).toEqual([
      [-5000, 41],
      [80, 9000],
    ]);
    expect(fitHours(coat(), ramp([5, 20, 5]), t0 - 5000, t0 + 9000).map((s) => [s.start - t0, s.end - t0])).toEqual([
      [20, 101],
    ]);
  });
  it('past the last sample what lags still warms up', () => {
    const limitless = coat({ limits: { ...limits, dewMarginK: -99 } });
    // The air is at 20 °C from the last sample on, the surface at 5 °C then: it has 10 °C after ln(15/10) time constants.
    const air = ramp([5, 5, 20], 1);
    const [span] = fitHours(limitless, air, t0, t0 + 9000, 40);
    expect(Math.abs((span?.start ?? 0) - t0 - 1.5 - timeConstantMinutes(40) * Math.log(1.5))).toBeLessThan(2);
    expect(span?.end).toBe(t0 + 9000);
  });
  it('each material by its own limits, in the same air', () => {
    fc.assert(
      fc.property(wildAir(5, 30), (air) => {
        const all = [
          madeUp({ mechanism: 'oxidation' }),
          coat(),
          coat({ limits: { ...limits, minTempC: 15 } }),
          coat({ limits: { ...limits, dewMarginK: 6 } }),
          coat({ minFilmTempC: 14 }),
          coat({ mechanism: 'water' }),
          madeUp({ mechanism: 'water' }),
        ];
        // Also where so much is asked for that it is remembered.
        for (const [from, to] of [
          [t0, t0 + 2000],
          [t0 - 2000, t0 + 4000],
        ] as const)
          for (const material of all)
            expect(fitHours(material, air, from, to)).toEqual(fitHours(material, { ...air }, from, to));
      }),
      { numRuns: 30 },
    );
  });
  it('what has no limits may be started at any time', () => {
    expect(applicationStarts(madeUp({ mechanism: 'oxidation' }), film, ramp([-5, -5]), 30, t0, t0 + 500)).toEqual([
      { start: t0, end: t0 + 500 },
    ]);
  });
  it('what has no dust-free mark minds the air until it can be touched, at the slow end', () => {
    const touch = madeUp({ mechanism: 'two-part', activationKJPerMol: 0, limits, marks: { touch: hours(2, 1, 3) } });
    // Warm for ten hours, then too cold for it: 3 h of drying and 30 min of work before that.
    const air = {
      ...ramp([20]),
      stepMinutes: 1,
      tempC: Float64Array.from({ length: 900 }, (_, m) => (m < 600 ? 20 : 5)),
      rhPercent: new Float64Array(900).fill(50),
    };
    expect(applicationStarts(touch, film, air, 30, t0, t0 + 900)).toEqual([
      { start: t0, end: t0 + 600 - 180 - 30 + 1 },
    ]);
  });
  it('a mix outlives the run from just those minutes at which it does', () => {
    const endless = coat({ mechanism: 'two-part', marks: {} });
    const mixed = { ...endless, potLife: hours(1.2, 0.8, 2) };
    const seen = { fit: 0, unfit: 0 };
    fc.assert(
      fc.property(wildAir(12, 31), fc.integer({ min: 20, max: 60 }), fc.nat(40), (air, run, offset) => {
        const [from, to] = [t0 + offset, t0 + 1500 + offset];
        const potLife = potLifeMap(mixed, air)!;
        const starts = applicationStarts(mixed, film, air, run, from, to);
        const without = applicationStarts(endless, film, air, run, from, to);
        const has = (spans: typeof starts, m: number) => spans.some((s) => s.start <= m && m < s.end);
        for (let m = from - 2; m <= to + 2; m += 1) {
          const fits = has(without, m) && potLife.at(m) >= m + run;
          expect([m, has(starts, m)]).toEqual([m, fits]);
          if (has(without, m)) seen[fits ? 'fit' : 'unfit'] += 1;
        }
      }),
      { numRuns: 300 },
    );
    expect(Math.min(seen.fit, seen.unfit)).toBeGreaterThan(20);
  });
});

describe('a limit over a stretch', () => {
  const [low, high] = [fc.double({ min: -5, max: 45, noNaN: true }), fc.double({ min: 0, max: 15, noNaN: true })];
  const part = fc.double({ min: 0, max: 1, noNaN: true });
  it('is broken somewhere, or everywhere, just if it is broken at some, or at every, point of it', () => {
    fc.assert(
      fc.property(
        low,
        high,
        low,
        high,
        fc.double({ min: 0, max: 90, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        part,
        part,
        part,
        (t, dt, s, ds, h, dh, a, b, c) => {
          const material = coat({ mechanism: 'water', minFilmTempC: 6 });
          const box = {
            temp: { low: t, high: t + dt },
            surface: { low: s, high: s + ds },
            rh: { low: h, high: h + dh },
          };
          const found = breaches(material, { tempC: t + a * dt, rhPercent: h + b * dh }, s + c * ds).length > 0;
          if (found) expect(brokenIn(material, box)).toBe(true);
          else expect(brokenThroughout(material, box)).toBe(false);
        },
      ),
      { numRuns: 2000 },
    );
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
    // 5 °C until a heater makes it 20 °C and 65 % at once: the dew point is 13.23 °C, so the surface must reach 16.23 °C,
    // which takes ln(15/3.77) time constants (Newton's cooling, textbook)
    const heated = {
      ...still(0, 50),
      stepMinutes: 1,
      tempC: Float64Array.from({ length: 2000 }, (_, m) => (m < 600 ? 5 : 20)),
      rhPercent: Float64Array.from({ length: 2000 }, (_, m) => (m < 600 ? 50 : 65)),
    };
    const [span] = applicationStarts(coat(), film, heated, 10, t0, t0 + 1500, 19);
    const waits = timeConstantMinutes(19) * Math.log(15 / 3.77);
    expect(Math.abs((span?.start ?? 0) - t0 - 600 - waits)).toBeLessThan(2);
    expect(applicationStarts(coat(), film, heated, 10, t0, t0 + 1500)[0]?.start).toBe(t0 + 600);
  });

  it('keep the air warm for the hours after: latex stays at 10 °C or above for 24 h (Wood Handbook ch. 16)', () => {
    const keepAbove = { tempC: 10, hours: 24 };
    fc.assert(
      fc.property(wildAir(6, 20), minute, fc.integer({ min: 1, max: 90 }), (air, start, run) => {
        const material = coat({ limits: { ...limits, keepAbove } });
        const minds = (m: typeof material) => applicationStarts(m, film, air, run, t0, t0 + 3000);
        const has = (spans: ReturnType<typeof minds>) => spans.some((s) => s.start <= start && start < s.end);
        const ahead = Array.from({ length: run + 24 * 60 }, (_, k) => airAt(air, start + k).tempC);
        expect(has(minds(material))).toBe(has(minds(coat())) && Math.min(...ahead) >= 10);
      }),
      { numRuns: 100 },
    );
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
      'cold-ahead',
      'will-not-dry',
    ] as const;
    const texts = inWords(all.map((code) => ({ code, is: 1, limit: 2 }))).map((u) => u.text);
    expect(new Set(texts).size).toBe(all.length);
  });
});

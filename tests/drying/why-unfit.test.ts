import { describe, expect, test } from 'vitest';
import { condensationPointC, vpdPa } from '../../src/air/psychrometrics.ts';
import { breaches, brokenIn, brokenThroughout } from '../../src/drying/air-limits.ts';
import { stretchBoxes } from '../../src/drying/air-stretches.ts';
import { fitOutlook, fitStretches, oncePerLimits } from '../../src/drying/fit-stretches.ts';
import { workingTimes } from '../../src/drying/glue-times.ts';
import { surfaceOf } from '../../src/drying/surface.ts';
import { hindrances, whyUnfit } from '../../src/drying/why-unfit.ts';
import fc from '../support/property.ts';
import { hours, madeUp, still, t0, wildAir } from './arbitrary.ts';

const limits = { minTempC: 10, maxTempC: 30, minRhPercent: 20, maxRhPercent: 80, dewMarginK: 3, source: 'test' };
const coat = madeUp({ mechanism: 'oxidation', limits });
const codes = (...of: Parameters<typeof breaches>) => breaches(...of).map((b) => b.code);

describe('each limit', () => {
  test('holds to the edge, and is broken beyond', () => {
    const air = (tempC: number, rhPercent: number) => ({ tempC, rhPercent });
    for (const [tempC, rh] of [
      [10, 50],
      [30, 50],
      [20, 20],
      [20, 80],
    ] as const)
      expect(codes(coat, air(tempC, rh))).toEqual([]);
    expect(breaches(coat, air(9.5, 50))).toEqual([{ code: 'air-too-cold', is: 9.5, limit: 10 }]);
    expect(breaches(coat, air(30.5, 50))).toEqual([{ code: 'air-too-warm', is: 30.5, limit: 30 }]);
    expect(breaches(coat, air(20, 19))).toEqual([{ code: 'air-too-dry', is: 19, limit: 20 }]);
    expect(breaches(coat, air(20, 81))).toEqual([{ code: 'air-too-damp', is: 81, limit: 80 }]);
    expect(breaches(coat, air(20, 50), 9)).toContainEqual({ code: 'surface-too-cold', is: 9, limit: 10 });
    expect(breaches(coat, air(20, 50), 31)).toEqual([{ code: 'surface-too-warm', is: 31, limit: 30 }]);
    for (const surfaceC of [30, 13]) expect(codes(coat, air(20, 50), surfaceC)).toEqual([]);
    expect(codes(coat, air(20, 20), 10)).toEqual([]);
    // A surface as cold as the air is told of as the air.
    expect(codes(coat, air(9, 50), 9)).toEqual(['air-too-cold']);
    expect(codes(coat, air(31, 50), 31)).toEqual(['air-too-warm']);
  });
  test('of the dew point, by as much as it is clear of it', () => {
    const dew = condensationPointC(20, 70);
    expect(breaches(coat, { tempC: 20, rhPercent: 70 }, dew + 2.9)).toEqual([
      { code: 'near-dew-point', is: expect.closeTo(2.9, 6) as number, limit: 3 },
    ]);
    expect(codes(coat, { tempC: 20, rhPercent: 70 }, dew + 3.001)).toEqual([]);
  });
  test('of the film, of water, and of what has none', () => {
    const film = madeUp({ mechanism: 'oxidation', minFilmTempC: 12 });
    expect(breaches(film, { tempC: 20, rhPercent: 50 }, 12)).toEqual([
      { code: 'film-does-not-form', is: 12, limit: 12 },
    ]);
    expect(codes(film, { tempC: 5, rhPercent: 50 }, 12.1)).toEqual([]);
    const water = madeUp({ mechanism: 'water' });
    const [damp] = breaches(water, { tempC: 20, rhPercent: 95 });
    expect(damp?.code).toBe('will-not-dry');
    // The humidity told is that from which on it dries: a deficit of 150 Pa.
    expect(vpdPa(20, damp!.limit)).toBeCloseTo(150, 6);
    expect(codes(water, { tempC: 20, rhPercent: damp!.limit - 0.01 })).toEqual([]);
    expect(codes(water, { tempC: 20, rhPercent: damp!.limit + 0.01 })).toEqual(['will-not-dry']);
    expect(codes(madeUp({ mechanism: 'oxidation' }), { tempC: -5, rhPercent: 100 })).toEqual([]);
  });
});

test('a box is broken where one of its corners is, and throughout where its best corner is', () => {
  const between = (min: number, max: number) =>
    fc
      .tuple(fc.double({ min, max, noNaN: true }), fc.double({ min: 0, max: 6, noNaN: true }), fc.boolean())
      .map(([low, width, flat]) => ({ low, high: flat ? low : low + width }));
  const anyMaterial = fc.constantFrom(
    coat,
    madeUp({ mechanism: 'water', limits, minFilmTempC: 14 }),
    madeUp({ mechanism: 'water' }),
    madeUp({ mechanism: 'oxidation', minFilmTempC: 14 }),
    madeUp({ mechanism: 'oxidation' }),
  );
  const seen = { broken: 0, throughout: 0, fit: 0 };
  fc.assert(
    fc.property(anyMaterial, between(6, 32), between(10, 97), between(6, 32), (material, temp, rh, surface) => {
      const box = { temp, rh, surface };
      const corners = [temp.low, temp.high].flatMap((tempC) =>
        [rh.low, rh.high].flatMap((rhPercent) =>
          [surface.low, surface.high].map((surfaceC) => breaches(material, { tempC, rhPercent }, surfaceC)),
        ),
      );
      // A surface apart from its air is named by itself, as the same limit.
      const isUnfit = corners.map((found) => found.length > 0);
      expect(brokenIn(material, box)).toBe(isUnfit.includes(true));
      seen[brokenIn(material, box) ? 'broken' : 'fit'] += 1;
      if (brokenThroughout(material, box)) {
        seen.throughout += 1;
        expect(isUnfit).not.toContain(false);
      }
      const point = {
        temp: { low: temp.low, high: temp.low },
        rh: { low: rh.low, high: rh.low },
        surface: { low: surface.low, high: surface.low },
      };
      const unfit = breaches(material, { tempC: temp.low, rhPercent: rh.low }, surface.low).length > 0;
      expect([brokenIn(material, point), brokenThroughout(material, point)]).toEqual([unfit, unfit]);
    }),
    { numRuns: 600 },
  );
  expect(Math.min(seen.broken, seen.throughout, seen.fit)).toBeGreaterThan(5);
});

test('a box that touches its limits is fit, and each limit by itself breaks it', () => {
  const wide = madeUp({ mechanism: 'oxidation', limits: { ...limits, dewMarginK: -99 } });
  const box = { temp: { low: 10, high: 30 }, rh: { low: 20, high: 80 }, surface: { low: 10, high: 30 } };
  expect([brokenIn(wide, box), brokenThroughout(wide, box)]).toEqual([false, false]);
  for (const [part, change] of [
    ['temp', { low: 9.9 }],
    ['temp', { high: 30.1 }],
    ['rh', { low: 19.9 }],
    ['rh', { high: 80.1 }],
    ['surface', { low: 9.9 }],
    ['surface', { high: 30.1 }],
  ] as const)
    expect([part, change, brokenIn(wide, { ...box, [part]: { ...box[part], ...change } })]).toEqual([
      part,
      change,
      true,
    ]);
});

test('the cold to come is told of beside all else but the cold that is there', () => {
  const kept = madeUp({
    mechanism: 'oxidation',
    limits: { ...limits, dewMarginK: -99, keepAbove: { tempC: 12, hours: 2 } },
  });
  const codesAt = (rh: number) =>
    hindrances(
      kept,
      { ...still(20, rh), stepMinutes: 60, tempC: Float64Array.of(20, 20, 11), rhPercent: Float64Array.of(rh, rh, rh) },
      t0,
    ).map((b) => b.code);
  expect(codesAt(50)).toEqual(['cold-ahead']);
  expect(codesAt(85)).toEqual(['air-too-damp', 'cold-ahead']);
});

test('the box of a stretch holds all that air and surface are in it, and no more', () => {
  fc.assert(
    fc.property(wildAir(), fc.constantFrom(0, 19), fc.integer({ min: 1, max: 15 }), (air, mm, length) => {
      const boxes = stretchBoxes(air, mm, length);
      const surface = surfaceOf(air, mm);
      const last = air.tempC.length - 1;
      for (let k = 0; k * length < last; k += 1) {
        const at = [...Array(Math.min(last, (k + 1) * length) - k * length + 1).keys()].map((i) => i + k * length);
        const range = (values: number[]) => ({ low: Math.min(...values), high: Math.max(...values) });
        const temps = at.map((i) => air.tempC[i]!);
        const surfaces = at.map((i) => surface(air.from + i * air.stepMinutes));
        const box = boxes(k);
        expect(box.temp).toEqual(range(temps));
        expect(box.rh).toEqual(range(at.map((i) => air.rhPercent[i]!)));
        expect(box.surface.low).toBeCloseTo(Math.min(...temps, ...surfaces), 9);
        expect(box.surface.high).toBeCloseTo(Math.max(...temps, ...surfaces), 9);
      }
    }),
  );
});

test('each reason in words', () => {
  const says = (over: Parameters<typeof madeUp>[0], tempC: number, rh: number) =>
    whyUnfit(madeUp({ mechanism: 'oxidation', ...over }), still(tempC, rh), t0).map((u) => u.text);
  const wide = { ...limits, dewMarginK: 0 };
  expect(says({ limits: wide }, 8, 50)).toEqual(['air at 8.0 °C is colder than 10.0 °C']);
  expect(says({ limits: wide }, 31.25, 50)).toEqual(['air at 31.3 °C is warmer than 30.0 °C']);
  expect(says({ limits: wide }, 20, 10)).toEqual(['humidity of 10 % is below 20 %']);
  expect(says({ limits: wide }, 20, 85)).toEqual(['humidity of 85 % is above 80 %']);
  // At 20 °C and 90 % the dew point is 18.3 °C (Magnus formula).
  expect(says({ limits: { ...limits, maxRhPercent: 100 } }, 20, 90)).toEqual([
    'surface is 1.7 K above the dew point; it needs 3.0 K',
  ]);
  expect(says({ minFilmTempC: 12 }, 11, 50)).toEqual(['at 11.0 °C no film forms; it needs more than 12.0 °C']);
  expect(says({ mechanism: 'water' }, 20, 97)).toEqual(['at 97 % the air takes up hardly any water: it will not dry']);
  const keepAbove = { tempC: 12, hours: 2 };
  const cooling = {
    ...still(20, 50),
    stepMinutes: 60,
    tempC: Float64Array.from([20, 20, 11, 20, 20, 20]),
    rhPercent: new Float64Array(6).fill(50),
  };
  const kept = madeUp({ mechanism: 'oxidation', limits: { ...limits, keepAbove } });
  expect(whyUnfit(kept, cooling, t0).map((u) => u.text)).toEqual([
    'air falls to 11.0 °C too soon; it must stay at 12.0 °C or above',
  ]);
  expect(hindrances(kept, cooling, t0)).toEqual([{ code: 'cold-ahead', is: 11, limit: 12 }]);
  expect(hindrances(kept, cooling, t0 + 121)).toEqual([expect.objectContaining({ code: 'cold-ahead' })]);
  expect(hindrances(kept, cooling, t0 + 180)).toEqual([]);
  expect(
    hindrances(
      madeUp({ mechanism: 'oxidation', limits: { ...limits, keepAbove: { ...keepAbove, tempC: 11 } } }),
      cooling,
      t0,
    ),
  ).toEqual([]);
  // What is too cold now is not told of twice.
  expect(hindrances(kept, still(9, 50), t0).map((b) => b.code)).toEqual(['air-too-cold']);
  const jump = { ...cooling, tempC: Float64Array.from([2, 2, 2, 40, 40, 40]), stepMinutes: 180 };
  const cold = whyUnfit(coat, jump, t0 + 361 + 60, 40).map((u) => u.text);
  expect(cold).toContainEqual(expect.stringMatching(/^surface at -?\d+\.\d °C is colder than 10\.0 °C$/));
  const fallen = { ...cooling, tempC: Float64Array.from([45, 45, 45, 0, 0, 0]), stepMinutes: 60 };
  expect(whyUnfit(coat, fallen, t0 + 155, 40).map((u) => u.text)).toContainEqual(
    expect.stringMatching(/^surface at \d+\.\d °C is warmer than 30\.0 °C$/),
  );
});

describe('stretches', () => {
  test('each reason once, as it is at its worst of start, end and the quarters of an hour between', () => {
    const temps = [20, 20, 9, 2, 6, 20, 20];
    const air = {
      ...still(20, 50),
      stepMinutes: 15,
      tempC: Float64Array.from(temps),
      rhPercent: new Float64Array(7).fill(50),
    };
    const [warm, cold, again] = fitStretches(
      madeUp({ mechanism: 'oxidation', limits: { ...limits, dewMarginK: -99 } }),
      air,
      t0,
      t0 + 90,
    );
    expect([warm?.fit, cold?.fit, again?.fit]).toEqual([true, false, true]);
    expect(warm?.why).toEqual([]);
    expect(cold?.why.filter((w) => w.code === 'air-too-cold')).toEqual([
      expect.objectContaining({ is: 2, limit: 10, text: 'air at 2.0 °C is colder than 10.0 °C' }),
    ]);
    expect([warm?.start, cold?.end]).toEqual([t0, again?.start]);
  });
  test('where only the work is still cold, waiting is all it takes', () => {
    const temps = [-20, -20, 20, 20, 20, 20, 20, 20, 20];
    const air = {
      ...still(20, 50),
      stepMinutes: 60,
      tempC: Float64Array.from(temps),
      rhPercent: new Float64Array(9).fill(30),
    };
    const stretches = fitOutlook(
      madeUp({ mechanism: 'oxidation', limits: { ...limits, dewMarginK: -99 } }),
      air,
      t0 + 120,
      t0 + 480,
    );
    expect(stretches.map((s) => [s.fit, s.remedy])).toEqual([
      [false, { wait: true }],
      [true, undefined],
    ]);
    expect(stretches[1]).not.toHaveProperty('remedy');
  });
  test('what shares its limits is worked out once', () => {
    const worked: string[] = [];
    const work = (m: { id: string }) => {
      worked.push(m.id);
      return m.id;
    };
    const a = { ...coat, id: 'a' };
    const more = [
      a,
      { ...coat, id: 'b', limits: { ...limits, source: 'another' } },
      { ...coat, id: 'c', minFilmTempC: 5 },
      { ...coat, id: 'd', mechanism: 'solvent' as const },
      { ...coat, id: 'e', mechanism: 'water' as const },
    ];
    expect(oncePerLimits(more, work)).toEqual(['a', 'a', 'c', 'a', 'e']);
    expect(worked).toEqual(['a', 'c', 'e']);
  });
});

test('working times: of what the sheet names, the fast end; a glue that gels by cooling has half of them 10 K colder', () => {
  const hide = madeUp({
    mechanism: 'hide-glue',
    openTime: hours(2 / 60, 1 / 60),
    closedTime: hours(8 / 60, 4 / 60),
    wipeOff: hours(20 / 60, 10 / 60),
  });
  const round = (times: object) =>
    Object.fromEntries(Object.entries(times).map(([k, v]) => [k, Math.round(Number(v) * 1e6) / 1e6]));
  expect(round(workingTimes(hide, { tempC: 23, rhPercent: 50 }))).toEqual({
    openMinutes: 1,
    closedMinutes: 4,
    wipeOffMinutes: 10,
  });
  expect(round(workingTimes(hide, { tempC: 13, rhPercent: 50 }))).toEqual({
    openMinutes: 0.5,
    closedMinutes: 2,
    wipeOffMinutes: 5,
  });
  expect(workingTimes(madeUp({ mechanism: 'hide-glue' }), { tempC: 23, rhPercent: 50 })).toEqual({});
  const oil = madeUp({ mechanism: 'oxidation', wipeOff: hours(0.5, 0.25) });
  // A water-borne stain is wiped off as fast as it dries: by the vapour-pressure deficit.
  const stain = madeUp({ mechanism: 'water', wipeOff: hours(0.5, 0.25) });
  expect(workingTimes(stain, { tempC: 30, rhPercent: 30 }).wipeOffMinutes).toBeCloseTo(
    (15 * vpdPa(23, 50)) / vpdPa(30, 30),
    6,
  );
  expect(workingTimes(oil, { tempC: 13, rhPercent: 50 })).toEqual({ wipeOffMinutes: 15 });
  // 50 kJ/mol doubles it every 10 K or so: 1.95 times as fast at 33 °C (Arrhenius).
  expect(workingTimes(oil, { tempC: 33, rhPercent: 50 }).wipeOffMinutes).toBeCloseTo(
    15 / Math.exp((50_000 / 8.314462618) * (1 / 296.15 - 1 / 306.15)),
    6,
  );
});

// Work that comes into another room, against the definition looked through minute by minute: Newton's cooling of each piece
// that could have left until then, and the limits of the material themselves.
import { expect, test } from 'vitest';
import { airAt, seriesEnd, type AirSeries } from '../../src/air/series.ts';
import { breaches } from '../../src/drying/air-limits.ts';
import { SETTLED_WITHIN_K, warmedThrough } from '../../src/drying/carry-in.ts';
import { surfaceOf, timeConstantMinutes } from '../../src/drying/surface.ts';
import type { Material } from '../../src/model/material.ts';
import fc from '../support/property.ts';
import { hundredths, madeUp, still, t0, wildAir } from './arbitrary.ts';

const limits = { minTempC: 10, maxTempC: 40, minRhPercent: 0, maxRhPercent: 90, dewMarginK: 3, source: 'test' };
const coat = madeUp({ mechanism: 'oxidation', limits });
const materials = [
  coat,
  madeUp({ mechanism: 'water', limits, minFilmTempC: 14 }),
  madeUp({ mechanism: 'water', minFilmTempC: 12 }),
  madeUp({ mechanism: 'two-part', limits: { ...limits, dewMarginK: -99, minTempC: 16 } }),
  madeUp({ mechanism: 'oxidation' }),
];

/** How much colder than the room's own the coldest is that left until then; `start`: from then on both airs are known. */
function coldestApart(fromAir: AirSeries, toAir: AirSeries, mm: number, start: number, leaves: number): number {
  const [there, here] = [surfaceOf(fromAir, mm), surfaceOf(toAir, mm)];
  const kept = Math.exp(-1 / timeConstantMinutes(mm));
  let apart = 0;
  for (let left = Math.min(start, leaves); left <= leaves; left += 1)
    apart = Math.min(0, there(left) - here(left), apart * kept);
  return apart;
}

/** From when on it is never again the work's own cold, `apart` K, that breaks a limit, by the definition. */
function coatableFrom(toAir: AirSeries, mm: number, material: Material, leaves: number, apart: number): number {
  if (apart >= -SETTLED_WITHIN_K) return leaves;
  const lag = timeConstantMinutes(mm);
  const here = surfaceOf(toAir, mm);
  let from = leaves;
  for (let minute = leaves; minute <= leaves + Math.ceil(lag * Math.log(-apart / SETTLED_WITHIN_K)); minute += 1) {
    const own = here(minute);
    const cold = own + apart * Math.exp(-(minute - leaves) / lag);
    const isBroken = (surfaceC: number) => breaches(material, airAt(toAir, minute), surfaceC).length > 0;
    if (isBroken(cold) && !isBroken(own)) from = minute + 1;
  }
  return from;
}

const earlier = (air: AirSeries, samples: number): AirSeries => ({ ...air, from: air.from - samples * 180 });

test('the work may be coated once its own cold breaks no limit any more, whoever left last', () => {
  const seen = { waits: 0, none: 0 };
  fc.assert(
    fc.property(
      wildAir(-5, 26),
      wildAir(8, 24),
      fc.constantFrom(...materials),
      fc.constantFrom(9, 19, 38),
      fc.array(hundredths(-0.1, 1.2), { minLength: 1, maxLength: 8 }),
      fc.nat(3),
      (a, b, material, mm, shares, samples) => {
        const fromAir = earlier(a, samples);
        const length = Math.min(1500, Math.max(seriesEnd(a), seriesEnd(b)) - t0);
        const map = warmedThrough(fromAir, b, mm, material);
        for (const share of shares) {
          const leaves = t0 + Math.round(share * length);
          const apart = coldestApart(fromAir, b, mm, t0, leaves);
          // Where it is a matter of the last digits, either is right.
          const [least, most] = [1e-7, -1e-7].map((by) => coatableFrom(b, mm, material, leaves, apart + by));
          const from = map.at(leaves);
          expect(from).toBeGreaterThanOrEqual(Math.min(least!, most!));
          expect(from).toBeLessThanOrEqual(Math.max(least!, most!));
          seen[from > leaves ? 'waits' : 'none'] += 1;
        }
      },
    ),
    { numRuns: 500 },
  );
  expect(Math.min(seen.waits, seen.none)).toBeGreaterThan(5);
});

test('asked again, or in another order, it says the same', () => {
  fc.assert(
    fc.property(wildAir(-5, 15), wildAir(8, 28), fc.array(fc.nat(1500), { minLength: 2, maxLength: 6 }), (a, b, ks) => {
      const fresh = (air: AirSeries): AirSeries => ({ ...air });
      const map = warmedThrough(a, b, 19, coat);
      for (const k of [...ks, ...ks.toReversed()])
        expect(map.at(t0 + k)).toBe(warmedThrough(fresh(a), fresh(b), 19, coat).at(t0 + k));
    }),
    { numRuns: 60 },
  );
});

test('each pair of rooms, and each thickness, has its own', () => {
  const [shed, cellar, room] = [still(2, 60), still(12, 60), still(20, 65)];
  const wait = (air: AirSeries, mm: number) => warmedThrough(air, room, mm, coat).at(t0 + 9) - t0 - 9;
  // Dew point 13.23 °C (ISO 8502-4), so that the surface must have 16.23 °C.
  const worked = (startC: number, mm: number) => timeConstantMinutes(mm) * Math.log((20 - startC) / 3.77);
  for (const [air, startC] of [
    [shed, 2],
    [cellar, 12],
  ] as const)
    for (const mm of [9, 38]) expect(Math.abs(wait(air, mm) - worked(startC, mm))).toBeLessThanOrEqual(1.5);
  const colder = still(18, 50);
  expect(warmedThrough(shed, colder, 9, coat).at(t0 + 9)).not.toBe(warmedThrough(shed, room, 9, coat).at(t0 + 9));
});

/** First whole minute after leaving at which a surface from `startC` in still air at 20 °C is above `leastC`. */
const firstAbove = (startC: number, leastC: number, mm: number): number =>
  Math.floor(timeConstantMinutes(mm) * Math.log((20 - startC) / (20 - leastC))) + 1;

test('a film that does not form at a hair below its least temperature waits for that hair', () => {
  const forms = madeUp({ mechanism: 'oxidation', limits, minFilmTempC: 19.8 });
  expect(warmedThrough(still(19, 50), still(20, 50), 40, forms).at(t0 + 5)).toBe(t0 + 5 + firstAbove(19, 19.8, 40));
  // One that forms from the next minute on waits for that minute.
  const soon = madeUp({ mechanism: 'oxidation', limits, minFilmTempC: 19.004 });
  expect(firstAbove(19, 19.004, 40)).toBe(1);
  expect(warmedThrough(still(19, 50), still(20, 50), 40, soon).at(t0 + 5)).toBe(t0 + 6);
});

test('nor does who is a hair too near to the dew point coat', () => {
  // At 20 °C and 80 % the dew point is 16.44 °C (Magnus formula, to a hundredth); 3.36 K above it the surface has 19.8 °C.
  const near = madeUp({ mechanism: 'oxidation', limits: { ...limits, dewMarginK: 3.36 } });
  const waits = warmedThrough(still(19, 50), still(20, 80), 40, near).at(t0 + 5) - t0 - 5;
  const [least, most] = [19.79, 19.81].map((leastC) => firstAbove(19, leastC, 40));
  expect(waits).toBeGreaterThanOrEqual(least!);
  expect(waits).toBeLessThanOrEqual(most!);
});

test('who left while the old room was cold may be the coldest though it is warm by now, also just at a sample', () => {
  const heated = {
    ...still(0, 50),
    stepMinutes: 60,
    tempC: Float64Array.of(0, 60, 60),
    rhPercent: new Float64Array(3).fill(50),
  };
  const room = still(20, 50);
  const warm = madeUp({ mechanism: 'oxidation', limits: { ...limits, minTempC: 19.9, dewMarginK: -99 } });
  for (const k of [59, 60, 61]) {
    const apart = coldestApart(heated, room, 9, t0, t0 + k);
    expect(surfaceOf(heated, 9)(t0 + k)).toBeGreaterThan(20);
    expect(apart).toBeLessThan(-0.3);
    const from = warmedThrough({ ...heated }, room, 9, warm).at(t0 + k);
    expect(from).toBe(coatableFrom(room, 9, warm, t0 + k, apart));
    expect(from).toBeGreaterThan(t0 + k);
  }
});

test('what is colder by less than a thermometer tells is as warm as the room', () => {
  const atLimit = madeUp({ mechanism: 'oxidation', limits: { ...limits, minTempC: 20, dewMarginK: 0 } });
  const waits = (startC: number) => warmedThrough(still(startC, 50), still(20, 50), 19, atLimit).at(t0 + 5) - t0 - 5;
  expect(waits(19.95)).toBe(0);
  expect(waits(21)).toBe(0);
  // From 19.8 °C it is within a tenth after ln(0.2/0.1) time constants.
  expect(Math.abs(waits(19.8) - timeConstantMinutes(19) * Math.log(2))).toBeLessThanOrEqual(2);
});

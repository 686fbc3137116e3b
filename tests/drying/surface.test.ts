import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import { coatableAfter, surfaceOf, surfaceTempC, timeConstantMinutes } from '../../src/drying/surface.ts';
import { NEVER } from '../../src/time/time-map.ts';
import { airAt, seriesEnd } from '../../src/air/series.ts';
import { breaches } from '../../src/drying/air-limits.ts';
import { SETTLED_WITHIN_K, warmedThrough } from '../../src/drying/carry-in.ts';
import { madeUp, still, t0, wildAir } from './arbitrary.ts';

describe('a surface', () => {
  it('closes 63 % of its distance to the air in its time constant', () => {
    const lag = timeConstantMinutes(19);
    const surface = surfaceTempC(still(20, 50), 19, 0, t0, t0 + Math.round(lag));
    expect(surface / 20).toBeCloseTo(1 - Math.exp(-1), 2);
  });

  it('follows the air of its room by Newton’s cooling, at every minute', () => {
    fc.assert(
      fc.property(wildAir(-5, 35), fc.constantFrom(6, 19, 40), (air, mm) => {
        const lag = timeConstantMinutes(mm);
        const surface = surfaceOf(air, mm);
        let surfaceC = airAt(air, air.from).tempC;
        expect(surface(air.from - 100)).toBeCloseTo(surfaceC, 9);
        // By another road: followed in steps of a twentieth of a minute.
        for (let minute = air.from; minute < seriesEnd(air) + 60; minute += 1) {
          expect(Math.abs(surface(minute) - surfaceC)).toBeLessThan(0.03);
          for (let k = 0.5; k < 20; k += 1)
            surfaceC += (airAt(air, minute + k / 20).tempC - surfaceC) * (1 - Math.exp(-1 / 20 / lag));
        }
      }),
      { numRuns: 40 },
    );
  });

  it('of thick wood lags more, by more than its thickness', () => {
    expect(timeConstantMinutes(38)).toBeGreaterThan(2 * timeConstantMinutes(19));
    // density 500 kg/m³, 1600 J/(kg K), 9 W/(m² K), 0.12 W/(m K): textbook values, from memory
    expect(timeConstantMinutes(19)).toBeCloseTo((500 * 1600 * 0.019 * (1 / 9 + 0.019 / 0.36)) / 60, 6);
  });
});

describe('a piece brought in', () => {
  it('waits longer the thicker and the colder it is, and not at all when it is warm', () => {
    const room = still(20, 65);
    const wait = (thickness: number, startC: number) => coatableAfter(room, thickness, startC, t0) - t0;
    expect(wait(19, 20)).toBe(0);
    expect(wait(40, 5)).toBeGreaterThan(wait(19, 5));
    expect(wait(19, 0)).toBeGreaterThan(wait(19, 10));
  });

  it('is fit at the very minute at which it is clear of the dew point, also past the end of the record', () => {
    // From 5 °C in still air at 20 °C and 65 %: 16.23 °C, 3 K above the dew point of 13.23 °C, after ln(15/3.77) time constants.
    const short = { ...still(20, 65), stepMinutes: 5 };
    for (const mm of [9, 40, 200]) {
      const waits = coatableAfter(short, mm, 5, t0 + 3) - t0 - 3;
      expect(Math.abs(waits - timeConstantMinutes(mm) * Math.log(15 / 3.77))).toBeLessThan(2 + mm / 50);
    }
  });

  it('never gets fit in soaking air', () => {
    expect(coatableAfter(still(20, 95), 19, 5, t0)).toBe(NEVER);
  });
});

describe('from room to room', () => {
  const limits = { minTempC: 10, maxTempC: 40, minRhPercent: 0, maxRhPercent: 90, dewMarginK: 3, source: 'test' };
  const coat = madeUp({ mechanism: 'oxidation', limits });
  const wide = {
    ...still(0, 50),
    stepMinutes: 20,
    tempC: Float64Array.of(-5, 30, 10),
    rhPercent: new Float64Array(3).fill(50),
  };

  it('is a map that never goes down, is never early, and has exact inverses', () => {
    fc.assert(
      fc.property(wildAir(-5, 30), wildAir(10, 30), fc.integer({ min: 0, max: 4000 }), (a, b, k) => {
        const map = warmedThrough(a, b, 19, coat);
        const t = t0 + k;
        const image = map.at(t);
        expect(image).toBeGreaterThanOrEqual(t);
        for (const later of [1, 2, 7, 60]) expect(map.at(t + later)).toBeGreaterThanOrEqual(image);
        expect(map.at(map.latest(image))).toBeLessThanOrEqual(image);
        expect(map.at(map.latest(image) + 1)).toBeGreaterThan(image);
        expect(map.at(map.earliest(image))).toBeGreaterThanOrEqual(image);
        expect(map.at(map.earliest(image) - 1)).toBeLessThan(image);
      }),
      { numRuns: 60 },
    );
  });

  it('keeps what it promises: from then on the work breaks no limit that the room does not break', () => {
    fc.assert(
      fc.property(
        wildAir(-5, 15),
        wildAir(8, 30),
        fc.integer({ min: 0, max: 3000 }),
        fc.constantFrom(9, 19, 38),
        (a, b, k, mm) => {
          const leaves = t0 + k;
          const from = warmedThrough(a, b, mm, coat).at(leaves);
          // by another road: cooling followed in steps of a tenth of a minute
          const lag = timeConstantMinutes(mm);
          let surfaceC = surfaceOf(a, mm)(leaves);
          for (let minute = leaves; minute < from + 200; minute += 1) {
            if (minute >= from && breaches(coat, airAt(b, minute), surfaceOf(b, mm)(minute)).length === 0)
              expect(breaches(coat, airAt(b, minute), surfaceC + SETTLED_WITHIN_K + 0.02)).toEqual([]);
            for (let k10 = 0; k10 < 10; k10 += 1)
              surfaceC += (airAt(b, minute + (k10 + 0.5) / 10).tempC - surfaceC) * (1 - Math.exp(-0.1 / lag));
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('from 10 °C into 20 °C and 65 % takes until the surface is 3 K above the dew point of 13.23 °C: ln(10/3.77) time constants', () => {
    const map = warmedThrough(still(10, 80), still(20, 65), 19, coat);
    const waits = timeConstantMinutes(19) * Math.log(10 / 3.77);
    expect(Math.abs(map.at(t0 + 30) - (t0 + 30) - waits)).toBeLessThanOrEqual(1.5);
    expect(map.at(t0 + 30)).toBe(coatableAfter(still(20, 65), 19, 10, t0 + 30));
  });

  it('of no thickness it is as warm as the air at once', () => {
    expect(warmedThrough(still(-5, 50), still(20, 65), 0, coat).at(t0 + 5)).toBe(t0 + 5);
    expect(surfaceOf(wide, 0)(t0 + 7)).toBeCloseTo(airAt(wide, t0 + 7).tempC, 9);
  });

  it('into a colder room, or one as warm, takes no time', () => {
    expect(warmedThrough(still(20, 50), still(15, 50), 19, coat).at(t0 + 5)).toBe(t0 + 5);
  });
});

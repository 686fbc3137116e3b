import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { acclimatise, coatableAfter, surfaceTempC, timeConstantMinutes } from '../../src/drying/surface.ts';
import { NEVER } from '../../src/time/time-map.ts';
import { still, t0, wildAir } from './arbitrary.ts';

describe('a surface', () => {
  it('closes 63 % of its distance to the air in its time constant', () => {
    const lag = timeConstantMinutes(19);
    const surface = surfaceTempC(still(20, 50), 19, 0, t0, t0 + Math.round(lag));
    expect(surface / 20).toBeCloseTo(1 - Math.exp(-1), 2);
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

  it('never gets fit in soaking air', () => {
    expect(coatableAfter(still(20, 95), 19, 5, t0)).toBe(NEVER);
  });

  it('waits for the coat’s own least temperature too', () => {
    const dry = still(20, 20);
    expect(coatableAfter(dry, 19, 4, t0)).toBe(t0);
    expect(coatableAfter(dry, 19, 4, t0, { minTempC: 15 })).toBeGreaterThan(t0 + 30);
  });
});

describe('from room to room', () => {
  it('is a map that never goes down, is never early, and has exact inverses', () => {
    fc.assert(
      fc.property(wildAir(-5, 30), wildAir(10, 30), fc.integer({ min: 0, max: 4000 }), (a, b, k) => {
        const map = acclimatise(a, b, 19);
        const t = t0 + k;
        const image = map.at(t);
        expect(image).toBeGreaterThanOrEqual(t);
        expect(map.at(t + 7)).toBeGreaterThanOrEqual(image);
        if (image >= NEVER) return;
        expect(map.at(map.latest(image))).toBeLessThanOrEqual(image);
        expect(map.at(map.latest(image) + 1)).toBeGreaterThan(image);
        expect(map.at(map.earliest(image))).toBeGreaterThanOrEqual(image);
        expect(map.at(map.earliest(image) - 1)).toBeLessThan(image);
      }),
      { numRuns: 60 },
    );
  });

  it('from 10 °C into 20 °C and 65 % takes what one piece takes', () => {
    const map = acclimatise(still(10, 80), still(20, 65), 19);
    expect(map.at(t0 + 30)).toBe(coatableAfter(still(20, 65), 19, 10, t0 + 30));
  });
});

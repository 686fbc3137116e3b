// What would make unfit air fit, against a look through all that could be done: heating to each half degree up to 25 K,
// drying to each 5 % down to 40 %.
import { describe, expect, test } from 'vitest';
import { airAt, type Air, type AirSeries } from '../../src/air/series.ts';
import { breaches } from '../../src/drying/air-limits.ts';
import { fitMinutes, fitOutlook, fitStretches } from '../../src/drying/fit-stretches.ts';
import { remedied, remedyFor, type Remedy } from '../../src/drying/remedy.ts';
import { hindrances } from '../../src/drying/why-unfit.ts';
import type { Limits, Material } from '../../src/model/material.ts';
import { USUAL_THICKNESS_MM } from '../../src/model/piece.ts';
import fc from '../support/property.ts';
import { hundredths, madeUp, still, t0 } from './arbitrary.ts';

const limits = { minTempC: 10, maxTempC: 32, minRhPercent: 20, maxRhPercent: 85, dewMarginK: 3, source: 'test' };
const coat = (over: Partial<Limits> = {}, more: Partial<Material> = {}) =>
  madeUp({ mechanism: 'oxidation', limits: { ...limits, ...over }, ...more });

function gentlest(material: Material, air: Air): Remedy | undefined {
  const fits = (remedy: Remedy) => breaches(material, remedied(air, remedy)).length === 0;
  const halfDegrees = Array.from({ length: 400 }, (_, i) => i / 2 - 100);
  const temps = halfDegrees.filter((tempC) => tempC > air.tempC && tempC <= air.tempC + 25);
  const rhs = Array.from({ length: 13 }, (_, i) => 100 - 5 * i);
  const driest = (heatToC?: number) => {
    const heated = remedied(air, heatToC === undefined ? {} : { heatToC });
    return rhs.find((rh) => rh < heated.rhPercent && breaches(material, { ...heated, rhPercent: rh }).length === 0);
  };
  const heat = temps.find((heatToC) => fits({ heatToC }));
  if (heat !== undefined) return { heatToC: heat };
  const dry = driest();
  if (dry !== undefined) return { dryToRhPercent: dry };
  const both = temps.find((heatToC) => driest(heatToC) !== undefined);
  return both === undefined ? undefined : { heatToC: both, dryToRhPercent: driest(both)! };
}

describe('the remedy of an hour', () => {
  const kindOf = (r: Remedy | undefined) =>
    r === undefined ? 'none' : `${r.heatToC === undefined ? '' : 'heat'}${r.dryToRhPercent === undefined ? '' : 'dry'}`;

  test('is the gentlest that there is', () => {
    const materials = [
      coat(),
      coat({ minTempC: 15, maxTempC: 17, maxRhPercent: 60 }),
      coat({ minTempC: -5, maxTempC: 12, dewMarginK: 0 }),
      coat({ maxRhPercent: 45, maxTempC: 25 }),
      madeUp({ mechanism: 'water', minFilmTempC: 12 }),
    ];
    const seen: Record<string, number> = {};
    const air = fc.record({
      tempC: fc.oneof(
        hundredths(-12, 36),
        fc.integer({ min: -24, max: 64 }).map((k) => k / 2),
      ),
      rhPercent: fc.oneof(hundredths(5, 100), fc.integer({ min: 5, max: 100 })),
    });
    fc.assert(
      fc.property(fc.constantFrom(...materials), air, (material, now) => {
        fc.pre(breaches(material, now).length > 0);
        const remedy = remedyFor(material, now);
        expect(remedy).toEqual(gentlest(material, now));
        seen[kindOf(remedy)] = (seen[kindOf(remedy)] ?? 0) + 1;
      }),
      { numRuns: 1500 },
    );
    expect(Object.keys(seen)).toEqual(expect.arrayContaining(['dry', 'heat', 'none']));
  });

  test('heats by 25 K and dries to 40 %, and no further', () => {
    const cold = coat({ dewMarginK: 0, minRhPercent: 0 });
    expect(remedyFor(cold, { tempC: -15, rhPercent: 80 })).toEqual({ heatToC: 10 });
    expect(remedyFor(cold, { tempC: -15.5, rhPercent: 80 })).toBeUndefined();
    const dry = (maxRhPercent: number) => coat({ maxRhPercent, maxTempC: 30 });
    expect(remedyFor(dry(40), { tempC: 30, rhPercent: 60 })).toEqual({ dryToRhPercent: 40 });
    expect(remedyFor(dry(39), { tempC: 30, rhPercent: 60 })).toBeUndefined();
    expect(remedyFor(coat({ minTempC: 15, maxTempC: 16, maxRhPercent: 50 }), { tempC: 10, rhPercent: 95 })).toEqual({
      heatToC: 15,
      dryToRhPercent: 50,
    });
  });
});

/** Air that turns about between the quarters of an hour, too. */
const restless = fc
  .array(
    fc.record({
      tempC: hundredths(2, 30),
      rhPercent: hundredths(30, 99),
    }),
    { minLength: 20, maxLength: 150 },
  )
  .map((samples): AirSeries => ({
    from: t0,
    stepMinutes: 7,
    tempC: Float64Array.from(samples, (s) => s.tempC),
    rhPercent: Float64Array.from(samples, (s) => s.rhPercent),
    notes: [],
  }));

describe('the remedy of a stretch', () => {
  const outlookOf = (material: Material, air: AirSeries, minutes = 60) => fitOutlook(material, air, t0, t0 + minutes);

  test('makes every minute of it fit, also those between the looks', () => {
    const seen = { remedy: 0 };
    fc.assert(
      fc.property(fc.constantFrom(coat(), coat({ maxRhPercent: 70 }), madeUp({})), restless, (material, air) => {
        for (const { start, end, remedy, fit } of outlookOf(material, air, 900)) {
          if (fit) expect(remedy).toBeUndefined();
          if (remedy === undefined) continue;
          seen.remedy += 1;
          for (let minute = start; minute < end; minute += 1)
            expect(breaches(material, remedied(airAt(air, minute), remedy))).toEqual([]);
        }
      }),
      { numRuns: 150 },
    );
    expect(seen.remedy).toBeGreaterThan(5);
  });

  test('is drying alone where it is hot and muggy, and no heat is spoken of', () => {
    expect(outlookOf(coat(), still(31, 95))[0]?.remedy).toEqual({ dryToRhPercent: 80 });
    expect(outlookOf(coat(), still(36, 40))[0]).not.toHaveProperty('remedy');
  });

  test('is heat for what has no limits but its own water', () => {
    const water = madeUp({ mechanism: 'water' });
    expect(outlookOf(water, still(20, 97))[0]?.remedy).toEqual(remedyFor(water, { tempC: 20, rhPercent: 97 }));
    expect(fitMinutes(water, still(20, 60), t0, t0 + 60)).toEqual([{ start: t0, end: t0 + 60 }]);
  });

  const series = (stepMinutes: number, temps: readonly number[], rh = 30): AirSeries => ({
    from: t0,
    stepMinutes,
    tempC: Float64Array.from(temps),
    rhPercent: new Float64Array(temps.length).fill(rh),
    notes: [],
  });

  test('against nothing but the cold to come is to keep it warm', () => {
    const kept = coat({ minTempC: 5, dewMarginK: -99, keepAbove: { tempC: 10, hours: 6 } });
    const evening = series(60, [20, 20, 20, 8, 8, 8, 20, 20, 20, 20]);
    const [stretch] = outlookOf(kept, evening);
    expect(stretch?.why.map((w) => w.code)).toEqual(['cold-ahead']);
    expect(stretch?.remedy).toEqual({ heatToC: 10, thenKeep: { tempC: 10, hours: 6 } });
    // With another hindrance beside it, too: the air is too damp as well.
    const damp = series(60, [20, 20, 20, 8, 8, 8, 20, 20, 20, 20], 90);
    const both = outlookOf(kept, damp)[0];
    expect(both?.why.map((w) => w.code).sort()).toEqual(['air-too-damp', 'cold-ahead']);
    expect(both?.remedy).toMatchObject({ thenKeep: { tempC: 10, hours: 6 } });
    expect(both?.remedy?.heatToC).toBeGreaterThan(20);
    const muggy = series(60, [31, 31, 31, 8, 8, 8, 31, 31, 31, 31], 95);
    const hot = coat({ minTempC: 5, keepAbove: { tempC: 10, hours: 6 } });
    expect(outlookOf(hot, muggy)[0]?.remedy).toEqual({
      heatToC: 10,
      thenKeep: { tempC: 10, hours: 6 },
      dryToRhPercent: 80,
    });
  });

  test('is heat where the air itself is too cold for a while, though only the work is at each look', () => {
    // Warm from 2 h on, but for a dip at 2 h 40: it lies between the looks, while the work is still warming up.
    const temps = [...Array<number>(24).fill(-20), ...Array<number>(60).fill(20)];
    temps[32] = 4;
    const air = series(5, temps);
    const [cold] = fitOutlook(coat({ dewMarginK: -99, minRhPercent: 0 }), air, t0 + 122, t0 + 167);
    expect(cold).toMatchObject({ fit: false, start: t0 + 122 });
    expect(cold!.end).toBeGreaterThan(t0 + 162);
    expect(cold?.remedy).toEqual({ heatToC: 10 });
  });
});

describe('the reasons of a stretch', () => {
  test('are those of its first and last minute and the quarters of an hour between, each at its worst', () => {
    fc.assert(
      fc.property(restless, fc.integer({ min: 0, max: 40 }), fc.integer({ min: 41, max: 400 }), (air, from, to) => {
        const material = coat({ minTempC: 18 });
        for (const { start, end, why } of fitStretches(material, air, t0 + from, t0 + to)) {
          const looks = Array.from({ length: end - start }, (_, i) => start + i).filter(
            (m) => m === start || m === end - 1 || m % 15 === 0,
          );
          const found = looks.flatMap((m) => hindrances(material, air, m, USUAL_THICKNESS_MM));
          const worst = new Map<string, number>();
          for (const { code, is, limit } of found)
            worst.set(code, Math.max(worst.get(code) ?? 0, Math.abs(is - limit)));
          expect(new Map(why.map((w) => [w.code as string, Math.abs(w.is - w.limit)]))).toEqual(worst);
        }
      }),
      { numRuns: 150 },
    );
  });

  test('and of no minute before it or after it', () => {
    const ramp = (temps: readonly number[]): AirSeries => ({
      ...still(0, 50),
      stepMinutes: 15,
      tempC: Float64Array.from(temps),
      rhPercent: new Float64Array(temps.length).fill(50),
    });
    const cold = (air: AirSeries, from: number, to: number) =>
      fitStretches(coat({ dewMarginK: -99 }), air, t0 + from, t0 + to)[0]?.why.find((w) => w.code === 'air-too-cold')
        ?.is;
    expect(cold(ramp([2, 17, 17, 17]), 1, 5)).toBeCloseTo(3, 9);
    expect(cold(ramp([9, 2, 2, 2]), 0, 15)).toBeCloseTo(9 - (7 * 14) / 15, 9);
    expect(cold(ramp([9, 2, 2, 2]), 0, 16)).toBe(2);
  });
});

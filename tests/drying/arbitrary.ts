import fc from '../support/property.ts';
import { sampleAir, type AirSeries } from '../../src/air/series.ts';
import type { Mark } from '../../src/model/mark.ts';
import { mechanisms, type Material, type SheetHours } from '../../src/model/material.ts';

export const t0 = 30_000_000;

/** A figure to two places, any as likely as any other: of all doubles most lie next to nought. */
export function hundredths(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min: Math.round(min * 100), max: Math.round(max * 100) }).map((k) => k / 100);
}

/** A few days of air that jumps about from sample to sample, also over freezing and saturation. */
export function wildAir(minTempC = -10, maxTempC = 40): fc.Arbitrary<AirSeries> {
  const sample = fc.record({ tempC: hundredths(minTempC, maxTempC), rhPercent: hundredths(5, 100) });
  return fc
    .tuple(fc.array(sample, { minLength: 2, maxLength: 120 }), fc.constantFrom(15, 30, 60, 180))
    .map(([samples, step]) =>
      sampleAir(t0, t0 + (samples.length - 1) * step, step, (m) => samples[(m - t0) / step] ?? samples[0]!),
    );
}

/** Days with a swing: what a shed really does. */
export function dailySwing(days: number, meanC: number, swingK: number, rhPercent: number): AirSeries {
  return sampleAir(t0, t0 + days * 1440, 15, (m) => ({
    tempC: meanC + (swingK / 2) * Math.cos((2 * Math.PI * (m - t0)) / 1440),
    rhPercent: Math.min(100, rhPercent - 2 * swingK * Math.cos((2 * Math.PI * (m - t0)) / 1440)),
  }));
}

export function still(tempC: number, rhPercent: number, days = 60): AirSeries {
  return sampleAir(t0, t0 + days * 1440, days * 1440, () => ({ tempC, rhPercent }));
}

export function hours(typical: number, low = typical, high = typical): SheetHours {
  return { low, typical, high, source: 'made up for the test' };
}

export function madeUp(over: Partial<Material>): Material {
  return {
    id: 'made-up',
    name: 'Made up',
    family: 'water-borne',
    mechanism: 'water',
    reference: { tempC: 23, rhPercent: 50 },
    marks: {},
    windows: [],
    stack: [],
    cautions: [],
    source: 'made up for the test',
    ...over,
  };
}

export const film = { material: 'made-up', thickness: 1 };

export const anyMechanism = fc.constantFrom(...mechanisms);
export const anyMark = fc.constantFrom<Mark>('dust-free', 'touch', 'tape', 'sand', 'recoat', 'handle', 'stack', 'cure');

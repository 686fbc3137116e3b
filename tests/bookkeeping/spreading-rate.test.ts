import fc from '../support/property.ts';
import { describe, expect, test } from 'vitest';
import { fillLitres, litresFor, sheetSpreadM2PerL } from '../../src/drying/film-maths.ts';
import { readCoverageM2PerL, readFilmUm } from '../../src/files/quantities/measure.ts';

const figure = (typical: number) => ({ low: typical, typical, high: typical, source: 'made up for the test' });

/** The rate that a sheet's volume solids (percent) and dry film (µm) make. */
function rate(solids: number, film: number): number {
  return sheetSpreadM2PerL({ volumeSolidsPercent: figure(solids), dryFilmUm: figure(film) }) ?? NaN;
}

function inMetric(read: { readonly ok: boolean; readonly value?: number }): number {
  return read.value ?? NaN;
}

describe('the theoretical spreading rate, 10 × volume solids / dry film (ISO 3233-3:2015, from memory)', () => {
  // Rows of a published table of theoretical spreading rates, rounded to one place as there (read).
  test.each([
    [100, 25, 40.0],
    [95, 75, 12.7],
    [80, 225, 3.6],
    [65, 25, 26.0],
    [50, 150, 3.3],
    [45, 75, 6.0],
    [40, 100, 4.0],
  ])('%d %% solids at %d µm: %d m²/L', (solids, film, published) => {
    expect(Math.abs(rate(solids, film) - published)).toBeLessThanOrEqual(0.05 + 1e-9);
  });

  test('65 % solids at 125 µm: 5.2 m²/L, and at 5 mil 208.5 sq ft/gal (a published worked example, read)', () => {
    expect(rate(65, 125)).toBeCloseTo(5.2, 9);
    const fiveMil = inMetric(readFilmUm('5 mil'));
    const published = inMetric(readCoverageM2PerL('208.52 sq ft/gal'));
    expect(Math.abs(rate(65, fiveMil) / published - 1)).toBeLessThan(0.001);
  });

  test('a gallon at 52 % solids, 30 % of it landing, 1.5 mil dry: 167 sq ft (a published worked example, read)', () => {
    const landing = rate(52, inMetric(readFilmUm('1.5 mil'))) * 0.3;
    expect(Math.abs(landing / inMetric(readCoverageM2PerL('167 sq ft/gal')) - 1)).toBeLessThan(0.002);
  });

  test('a coverage that the sheet names stands above the reckoned one', () => {
    const both = { coverageM2PerL: figure(9), volumeSolidsPercent: figure(40), dryFilmUm: figure(50) };
    expect(sheetSpreadM2PerL(both)).toBe(9);
    expect(sheetSpreadM2PerL({ volumeSolidsPercent: figure(40) })).toBeUndefined();
  });
});

test('the solids in the can are the film on the wood, what misses it, and nothing else', () => {
  const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(
      positive(0.05, 30),
      positive(5, 100),
      positive(5, 300),
      positive(0.1, 1),
      (area, solids, film, lands) => {
        const litres = litresFor(area, 1, rate(solids, film), lands);
        const solidLitres = (litres * solids) / 100;
        const filmLitres = (area * film) / 1000;
        expect(solidLitres * lands).toBeCloseTo(filmLitres, 9);
      },
    ),
  );
});

test('fills: a hundredth of 2 m², 3 mm deep, is 60 mL of filler that does not shrink and 100 mL of one with 60 % solids', () => {
  expect(fillLitres(2, 3, 100)).toBeCloseTo(0.06, 12);
  expect(fillLitres(2, 3, 60)).toBeCloseTo(0.1, 12);
});

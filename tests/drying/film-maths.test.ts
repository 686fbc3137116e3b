import { expect, test } from 'vitest';
import {
  dryFilmUm,
  fillLitres,
  litresFor,
  sheetSpreadM2PerL,
  theoreticalSpreadM2PerL,
  thinnedSolidsPercent,
  wetFilmUm,
} from '../../src/drying/film-maths.ts';
import { filmFactor } from '../../src/drying/film-factor.ts';
import { mechanisms } from '../../src/model/material.ts';
import { film, hours, madeUp } from './arbitrary.ts';

test('of a wet film its solids stay: 100 µm at 40 % leave 40 µm (ISO 23811)', () => {
  expect(dryFilmUm(100, 40)).toBe(40);
  expect(wetFilmUm(40, 40)).toBe(100);
});

test('a quarter more of thinner makes 50 % solids 40 %', () => {
  expect(thinnedSolidsPercent(50, 25)).toBe(40);
});

test('a litre covers ten square metres at 100 µm, as many micrometres as a litre on ten has', () => {
  expect(theoreticalSpreadM2PerL(100)).toBe(10);
  expect(sheetSpreadM2PerL({ volumeSolidsPercent: hours(40), dryFilmUm: hours(40) })).toBe(10);
  expect(sheetSpreadM2PerL({ volumeSolidsPercent: hours(40) })).toBeUndefined();
  expect(sheetSpreadM2PerL({ dryFilmUm: hours(40) })).toBeUndefined();
  expect(sheetSpreadM2PerL({ coverageM2PerL: hours(8, 7, 9) })).toBe(8);
});

test('dents of 3 mm on a hundredth of two square metres hold 60 mL, for which 80 mL of a filler with 75 % solids go in', () => {
  expect(fillLitres(2, 3, 75)).toBeCloseTo(0.08, 12);
});

test('litres: area by coats over what a litre covers and what of it lands; bare wood drinks 15 % of the first coat', () => {
  expect(litresFor(10, 2, 10, 0.5)).toBe(4);
  // What lands of the first coat is 85 % of what is put on.
  expect(litresFor(10, 1, 10, 1, true)).toBeCloseTo(1 / 0.85, 12);
  expect(litresFor(10, 3, 10, 1, true)).toBeCloseTo(2 + 1 / 0.85, 12);
  expect(litresFor(10, 0, 10, 1, true)).toBe(0);
  expect(litresFor(10, -1, 10, 1)).toBe(0);
});

test('what leaves or enters through a film takes the square of its thickness, what reacts throughout does not care', () => {
  const powers = {
    solvent: 2,
    water: 2,
    oxidation: 2,
    'two-part': 0,
    'moisture-cure': 2,
    'pva-glue': 2,
    'hide-glue': 2,
    'wood-water': 1,
    none: 0,
  };
  expect(Object.keys(powers).sort()).toEqual([...mechanisms].sort());
  for (const mechanism of mechanisms) {
    const material = madeUp({ mechanism, sheetDepthMm: 2 });
    const times = 3 ** powers[mechanism];
    expect([mechanism, filmFactor(material, { ...film, thickness: 3 })]).toEqual([mechanism, times]);
    expect([mechanism, filmFactor(material, { ...film, depthMm: 6 })]).toEqual([mechanism, times]);
    expect(filmFactor(material, { ...film, thickness: 3, depthMm: 6 })).toBe(times * times);
    // A fill no deeper than the sheet’s dries as the sheet says.
    for (const depthMm of [0.5, 2]) expect(filmFactor(material, { ...film, depthMm })).toBe(1);
    expect(filmFactor(madeUp({ mechanism }), { ...film, depthMm: 6 })).toBe(1);
  }
});

import { expect, test } from 'vitest';
import { saturationPressurePa, vpdPa } from '../../src/air/psychrometrics.ts';
import { equilibriumMoisturePercent } from '../../src/air/wood-moisture.ts';
import { dryingSpeeds, outlook, shownMechanisms } from '../../src/drying/outlook.ts';
import { humidityShare, rateLaw } from '../../src/drying/rate-law.ts';
import { marks } from '../../src/model/mark.ts';
import { mechanisms, type Mechanism } from '../../src/model/material.ts';
import { madeUp, still, t0 } from './arbitrary.ts';

/** Arrhenius by its textbook form, R = 8.314 J/(mol K). */
const slower = (kJ: number, tempC: number) =>
  Math.exp(((kJ * 1000) / 8.314462618) * (1 / 296.15 - 1 / (tempC + 273.15)));
const speed = (mechanism: Mechanism, tempC: number, rh: number, activationKJPerMol?: number) =>
  rateLaw(madeUp({ mechanism, ...(activationKJPerMol !== undefined && { activationKJPerMol }) }), 'touch').rate(
    tempC,
    rh,
  );

// The energies are those of the docstring, with its sources.
test.each<[Mechanism, number]>([
  ['solvent', 40],
  ['oxidation', 50],
  ['two-part', 57],
  ['moisture-cure', 45],
])('%s goes by Arrhenius with %d kJ/mol where the material names none, else by its own', (mechanism, usual) => {
  for (const tempC of [5, 23, 31]) {
    expect(speed(mechanism, tempC, 50)).toBeCloseTo(slower(usual, tempC), 9);
    expect(speed(mechanism, tempC, 50, 70)).toBeCloseTo(slower(70, tempC), 9);
  }
});

test('humidity: nothing for solvent and two parts, in proportion for moisture cure, a fifth from 70 to 85 % for oils', () => {
  for (const rh of [10, 50, 90]) {
    expect(speed('solvent', 23, rh)).toBeCloseTo(1, 9);
    expect(speed('two-part', 23, rh)).toBeCloseTo(1, 9);
    expect(speed('moisture-cure', 23, rh)).toBeCloseTo(rh / 50, 9);
    expect(speed('none', 5, rh)).toBe(1);
  }
  expect(speed('oxidation', 23, 70)).toBeCloseTo(1, 9);
  expect(speed('oxidation', 23, 85)).toBeCloseTo(1 / 1.2, 9);
});

test('any law is 1 at the air that its sheet is for, whatever that is', () => {
  for (const mechanism of mechanisms)
    for (const reference of [
      { tempC: 20, rhPercent: 65 },
      { tempC: 25, rhPercent: 85 },
    ])
      expect(rateLaw(madeUp({ mechanism, reference }), 'touch').rate(reference.tempC, reference.rhPercent)).toBeCloseTo(
        1,
        9,
      );
});

test('a water-borne film: by the vapour-pressure deficit as far as each mark goes by it, the rest by 44 kJ/mol', () => {
  const shares = { 'dust-free': 1, touch: 1, tape: 0.25, sand: 0.5, recoat: 0.5, handle: 0.25, stack: 0.25, cure: 0 };
  expect(humidityShare).toEqual(shares);
  for (const mark of marks) {
    const { rate } = rateLaw(madeUp({ mechanism: 'water' }), mark);
    expect(rate(23, 75)).toBeCloseTo(0.5 ** shares[mark], 9);
    const deficit = vpdPa(15, 50) / vpdPa(23, 50);
    expect(rate(15, 50)).toBeCloseTo(deficit ** shares[mark] * slower(44, 15) ** (1 - shares[mark]), 9);
  }
  expect(speed('water', 23, 100)).toBe(0);
  const cool = rateLaw(madeUp({ mechanism: 'water', minFilmTempC: 10 }), 'touch').rate;
  expect(cool(10, 50)).toBe(0);
  expect(cool(10.5, 50)).toBeCloseTo(vpdPa(10.5, 50) / vpdPa(23, 50) / 2, 9);
});

test('water in wood: a quarter of a glue line by the air, half of an open surface, the rest by what the wood still takes up', () => {
  const room = (rh: number) => equilibriumMoisturePercent(23, 100) - equilibriumMoisturePercent(23, rh);
  const wood = room(75) / room(50);
  expect(speed('pva-glue', 23, 75)).toBeCloseTo(0.5 ** 0.25 * wood ** 0.75, 9);
  for (const mechanism of ['hide-glue', 'wood-water'] as const)
    expect(speed(mechanism, 23, 75)).toBeCloseTo(0.5 ** 0.5 * wood ** 0.5, 9);
  const chalk = rateLaw(madeUp({ mechanism: 'pva-glue', minFilmTempC: 8 }), 'touch').rate;
  expect([chalk(7.9, 50), chalk(8, 50)]).toEqual([0, 0]);
  expect(chalk(8.5, 50)).toBeGreaterThan(0);
  expect(speed('wood-water', 23, 100)).toBe(0);
});

test('laws have one name where they are one, and another where they are not', () => {
  const key = (over: Parameters<typeof madeUp>[0], mark: (typeof marks)[number] = 'touch') =>
    rateLaw(madeUp(over), mark).key;
  const keys = [
    ...mechanisms.map((mechanism) => key({ mechanism })),
    ...(['solvent', 'water', 'oxidation', 'two-part', 'moisture-cure'] as const).map((mechanism) =>
      key({ mechanism, activationKJPerMol: 61 }),
    ),
    ...(['water', 'pva-glue', 'hide-glue', 'wood-water'] as const).map((mechanism) =>
      key({ mechanism, minFilmTempC: 7 }),
    ),
    key({ mechanism: 'water' }, 'sand'),
    key({ mechanism: 'water' }, 'cure'),
    key({ mechanism: 'oxidation', reference: { tempC: 20, rhPercent: 50 } }),
    key({ mechanism: 'oxidation', reference: { tempC: 23, rhPercent: 65 } }),
  ];
  expect(new Set(keys).size).toBe(keys.length);
  const solvent = (rhPercent: number, activationKJPerMol: number) =>
    key({ mechanism: 'solvent', reference: { tempC: 23, rhPercent }, activationKJPerMol });
  expect(solvent(5, 54)).not.toBe(solvent(55, 4));
  expect(key({ mechanism: 'solvent', id: 'a' })).toBe(key({ mechanism: 'solvent', id: 'b', activationKJPerMol: 40 }));
  expect(key({ mechanism: 'oxidation' }, 'cure')).toBe(key({ mechanism: 'oxidation' }, 'touch'));
});

test('the air as it is now: what its speeds are, and a row for each step', () => {
  expect(dryingSpeeds({ tempC: 15, rhPercent: 70 })).toEqual(
    Object.fromEntries(shownMechanisms.map((mechanism) => [mechanism, speed(mechanism, 15, 70)])),
  );
  const rows = outlook(still(15, 70), t0, t0 + 91, 30);
  expect(rows.map((r) => r.minute - t0)).toEqual([0, 30, 60, 90]);
  expect(outlook(still(15, 70), t0, t0 + 120).map((r) => r.minute - t0)).toEqual([0, 60]);
  expect(rows[0]).toMatchObject({ tempC: 15, rhPercent: 70, speed: dryingSpeeds({ tempC: 15, rhPercent: 70 }) });
  expect(rows[0]?.vpdPa).toBeCloseTo(0.3 * saturationPressurePa(15), 6);
});

import fc from '../support/property.ts';
import { describe, expect, it } from 'vitest';
import psychrolib from 'psychrolib';
import {
  absoluteHumidityGPerM3,
  condensationPointC,
  dewPointC,
  enthalpyKJPerKg,
  frostPointC,
  humidityRatio,
  pressureAtHeightPa,
  rhAfterHeating,
  saturationPressurePa,
  STANDARD_PRESSURE_PA,
  vapourPressurePa,
  vpdPa,
} from '../../src/air/psychrometrics.ts';
import { clearOfDew } from '../../src/air/dew-margin.ts';
import { num, table } from '../support/tables.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

const grid: [number, number][] = [];
for (let tempC = -20; tempC <= 45; tempC += 2.5) for (let rh = 5; rh <= 100; rh += 5) grid.push([tempC, rh]);

// Reference library: psychrolib 1.1.1, after ASHRAE Handbook—Fundamentals 2017, chapter 1.
describe('over a grid of temperature and humidity, as psychrolib has it', () => {
  it('holds at least 500 points', () => {
    expect(grid.length).toBeGreaterThanOrEqual(500);
  });

  it('saturation, vapour pressure and humidity ratio agree to a millionth', () => {
    for (const [tempC, rh] of grid) {
      const w = psychrolib.GetHumRatioFromRelHum(tempC, rh / 100, STANDARD_PRESSURE_PA);
      expect(saturationPressurePa(tempC) / psychrolib.GetSatVapPres(tempC)).toBeCloseTo(1, 6);
      expect(vapourPressurePa(tempC, rh) / psychrolib.GetVapPresFromRelHum(tempC, rh / 100)).toBeCloseTo(1, 6);
      // psychrolib never lets a humidity ratio fall below 1e-7
      expect(humidityRatio(tempC, rh) / w).toBeCloseTo(1, 6);
      expect(enthalpyKJPerKg(tempC, rh)).toBeCloseTo(psychrolib.GetMoistAirEnthalpy(tempC, w) / 1000, 3);
    }
  });

  it('dew point, or frost point below freezing, agrees to 0.002 K', () => {
    for (const [tempC, rh] of grid) {
      const theirs = psychrolib.GetTDewPointFromRelHum(tempC, rh / 100);
      expect(Math.abs(condensationPointC(tempC, rh) - theirs)).toBeLessThan(0.002);
      if (theirs > 0.1) expect(Math.abs(dewPointC(tempC, rh) - theirs)).toBeLessThan(0.002);
      if (theirs < -0.1) expect(Math.abs(frostPointC(tempC, rh) - theirs)).toBeLessThan(0.002);
    }
  });
});

describe('the printed check values', () => {
  it.each(table('moist-air'))('at $temp_c °C and $rh_percent %', (row) => {
    const [t, rh] = [num(row, 'temp_c'), num(row, 'rh_percent')];
    expect(Math.abs(saturationPressurePa(t) - num(row, 'saturation_pa'))).toBeLessThan(0.006);
    expect(Math.abs(vapourPressurePa(t, rh) - num(row, 'vapour_pa'))).toBeLessThan(0.006);
    expect(Math.abs(vpdPa(t, rh) - num(row, 'vpd_pa'))).toBeLessThan(0.011);
    expect(Math.abs(1000 * humidityRatio(t, rh) - num(row, 'ratio_g_per_kg'))).toBeLessThan(0.0006);
    const settles = row['settles_as'] === 'frost' ? frostPointC(t, rh) : dewPointC(t, rh);
    expect(Math.abs(settles - num(row, 'settles_c'))).toBeLessThan(0.002);
    // Magnus after Alduchov and Eskridge, J. Appl. Meteorol. 35 (1996) 601–609. Above freezing the two stay within
    // 0.02 K; below, RH counts over ice here and over water there.
    if (t > 0) expect(Math.abs(dewPointC(t, rh) - num(row, 'magnus_dew_c'))).toBeLessThan(0.02);
  });

  it.each(table('heating'))('outdoor air of $outdoors_c °C, $outdoors_rh % heated to $heated_to_c °C', (row) => {
    const [t, rh, to] = [num(row, 'outdoors_c'), num(row, 'outdoors_rh'), num(row, 'heated_to_c')];
    const after = rhAfterHeating(t, rh, to);
    expect(Math.abs(after - num(row, 'rh_after'))).toBeLessThan(0.006);
    expect(Math.abs(1000 * humidityRatio(to, after) - num(row, 'ratio_g_per_kg'))).toBeLessThan(0.0006);
    expect(Math.abs(condensationPointC(to, after) - num(row, 'settles_c'))).toBeLessThan(0.002);
    expect(Math.abs(vpdPa(to, after) - num(row, 'vpd_after_pa'))).toBeLessThan(0.6);
    const heat = enthalpyKJPerKg(to, after) - enthalpyKJPerKg(t, rh);
    expect(Math.abs(heat - num(row, 'heat_kj_per_kg'))).toBeLessThan(0.006);
  });

  // ISO 8502-4: 3 K above the dew point.
  it.each(table('dew-margin'))('at $temp_c °C the margin of 3 K allows up to $rh_percent %', (row) => {
    const [tempC, rh] = [num(row, 'temp_c'), num(row, 'rh_percent')];
    expect(clearOfDew({ tempC, rhPercent: rh - 0.1 }, tempC)).toBe(true);
    expect(clearOfDew({ tempC, rhPercent: rh + 0.1 }, tempC)).toBe(false);
  });

  // Calculated with psychrolib 1.1.1, and turned into °F.
  it('in Fahrenheit', () => {
    const fahrenheit = (f: number, rh: number): number => (dewPointC(((f - 32) * 5) / 9, rh) * 9) / 5 + 32;
    expect(fahrenheit(77, 50)).toBeCloseTo(56.955, 2);
    expect(fahrenheit(70, 50)).toBeCloseTo(50.528, 2);
    expect(fahrenheit(60, 65)).toBeCloseTo(48.217, 2);
  });

  // ASHRAE 2017, chapter 1, equation 3, calculated.
  it('at 1500 m above the sea: 84 556 Pa, and 8.722 g/kg at 20 °C and 50 %', () => {
    expect(pressureAtHeightPa(1500)).toBeCloseTo(84556, 0);
    expect(1000 * humidityRatio(20, 50, pressureAtHeightPa(1500))).toBeCloseTo(8.722, 2);
  });
});

describe('below freezing', () => {
  // 0 °C, 80 %: frost point with psychrolib 1.1.1; dew point by Magnus over water (Alduchov and Eskridge 1996); calculated.
  it('the frost point lies above the dew point, and is where water settles', () => {
    expect(frostPointC(0, 80)).toBeCloseTo(-2.683, 2);
    expect(dewPointC(0, 80)).toBeCloseTo(-3.04, 1);
    expect(condensationPointC(0, 80)).toBe(frostPointC(0, 80));
  });
});

describe('for any air', () => {
  const temp = fc.double({ min: -30, max: 45, noNaN: true });
  const rh = fc.double({ min: 1, max: 100, noNaN: true });

  it('the dew point holds the vapour of the air, and lies no higher than the air', () => {
    fc.assert(
      fc.property(temp, rh, (t, h) => {
        const settles = condensationPointC(t, h);
        expect(saturationPressurePa(settles) / vapourPressurePa(t, h)).toBeCloseTo(1, 3);
        expect(settles).toBeLessThanOrEqual(t + 0.001);
      }),
    );
  });

  it('heating keeps the vapour and lowers RH; cooling back gives the air there was', () => {
    fc.assert(
      fc.property(temp, rh, fc.double({ min: 0, max: 30, noNaN: true }), (t, h, by) => {
        const after = rhAfterHeating(t, h, t + by);
        expect(after).toBeLessThanOrEqual(h + 1e-3);
        expect(rhAfterHeating(t + by, after, t)).toBeCloseTo(h, 6);
      }),
    );
  });

  it('absolute humidity is the ideal gas law: 17.3 g/m³ at 20 °C saturated (steam tables, from memory)', () => {
    expect(absoluteHumidityGPerM3(20, 100)).toBeCloseTo(17.3, 1);
  });

  it('air with no water at all still answers', () => {
    expect(dewPointC(20, 0)).toBeLessThan(-60);
  });
});

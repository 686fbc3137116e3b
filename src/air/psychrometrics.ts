/**
 * Moist air. Saturation after Hyland and Wexler 1983 as printed in ASHRAE Handbook—Fundamentals 2017, chapter 1,
 * equation 5 (over ice, up to 0.01 °C) and equation 6 (over water). Below freezing, relative humidity is over ice.
 */

const KELVIN = 273.15;
const TRIPLE_POINT_C = 0.01;

/** Pa, at sea level. */
export const STANDARD_PRESSURE_PA = 101_325;

function lnOverIce(kelvin: number): number {
  const powers = -9.677843e-3 + kelvin * (6.2215701e-7 + kelvin * (2.0747825e-9 - 9.484024e-13 * kelvin));
  return -5.6745359e3 / kelvin + 6.3925247 + kelvin * powers + 4.1635019 * Math.log(kelvin);
}

function lnOverWater(kelvin: number): number {
  const powers = -4.8640239e-2 + kelvin * (4.1764768e-5 - 1.4452093e-8 * kelvin);
  return -5.8002206e3 / kelvin + 1.3914993 + kelvin * powers + 6.5459673 * Math.log(kelvin);
}

/** Vapour pressure of saturated air, Pa; over ice up to 0.01 °C, over water above. */
export function saturationPressurePa(tempC: number): number {
  const kelvin = tempC + KELVIN;
  return Math.exp(tempC <= TRIPLE_POINT_C ? lnOverIce(kelvin) : lnOverWater(kelvin));
}

/** Partial pressure of the water in the air, Pa (ASHRAE eqs. 12, 22). */
export function vapourPressurePa(tempC: number, rhPercent: number): number {
  return (saturationPressurePa(tempC) * rhPercent) / 100;
}

/** Vapour-pressure deficit, Pa: what draws water out of a wet film at air temperature. */
export function vpdPa(tempC: number, rhPercent: number): number {
  return (saturationPressurePa(tempC) * (100 - rhPercent)) / 100;
}

const MOST_TURNS = 6;
/** A turn that moves less than this leaves an error far below it. */
const CLOSE_K = 1e-6;

/** Temperature at which `ln` gives `target`, by Newton's method from a Magnus estimate (Alduchov and Eskridge 1996). */
function solve(ln: (kelvin: number) => number, pressurePa: number): number {
  const target = Math.log(pressurePa);
  const magnus = Math.log(pressurePa / 610.94);
  let kelvin = KELVIN + (243.04 * magnus) / (17.625 - magnus);
  for (let turn = 0; turn < MOST_TURNS; turn += 1) {
    const slope = (ln(kelvin + 0.01) - ln(kelvin - 0.01)) / 0.02;
    const off = (target - ln(kelvin)) / slope;
    kelvin += off;
    if (Math.abs(off) < CLOSE_K) break;
  }
  return kelvin - KELVIN;
}

/** Air so dry that it has no dew point is treated as this dry. */
const LEAST_PRESSURE_PA = 0.1;

/**
 * Dew point over liquid water, °C; below freezing that of supercooled water, which lies below the frost point.
 * The coating rule uses `condensationPointC`.
 */
export function dewPointC(tempC: number, rhPercent: number): number {
  return solve(lnOverWater, Math.max(LEAST_PRESSURE_PA, vapourPressurePa(tempC, rhPercent)));
}

/** Frost point over ice, °C; only meant where the result is at or below freezing. */
export function frostPointC(tempC: number, rhPercent: number): number {
  return solve(lnOverIce, Math.max(LEAST_PRESSURE_PA, vapourPressurePa(tempC, rhPercent)));
}

/** Where water first settles on a cooling surface, °C: the dew point, or below freezing the frost point. */
export function condensationPointC(tempC: number, rhPercent: number): number {
  const dew = dewPointC(tempC, rhPercent);
  return dew > TRIPLE_POINT_C ? dew : Math.min(TRIPLE_POINT_C, frostPointC(tempC, rhPercent));
}

/** kg of water a kg of dry air (ASHRAE eq. 20). */
export function humidityRatio(tempC: number, rhPercent: number, pressurePa = STANDARD_PRESSURE_PA): number {
  const vapour = vapourPressurePa(tempC, rhPercent);
  return (0.621945 * vapour) / (pressurePa - vapour);
}

/** g of water a m³ of air; 461.5 J/(kg K) is the gas constant of water vapour. */
export function absoluteHumidityGPerM3(tempC: number, rhPercent: number): number {
  return (1000 * vapourPressurePa(tempC, rhPercent)) / (461.5 * (tempC + KELVIN));
}

/** RH of air at `tempC` that holds `vapourPa`, percent; air cannot hold more than 100. */
export function rhFromVapour(tempC: number, vapourPa: number): number {
  return Math.min(100, (100 * vapourPa) / saturationPressurePa(tempC));
}

/**
 * RH after heating (or cooling) to `toC` with no water added or taken away, percent. Holds for dry electric or vented
 * heat; an unvented flame adds about 1.6 kg of water a kg of propane (stoichiometry) and makes the air damper.
 */
export function rhAfterHeating(tempC: number, rhPercent: number, toC: number): number {
  return rhFromVapour(toC, vapourPressurePa(tempC, rhPercent));
}

/** Enthalpy of moist air, kJ a kg of dry air (ASHRAE eq. 30). */
export function enthalpyKJPerKg(tempC: number, rhPercent: number, pressurePa = STANDARD_PRESSURE_PA): number {
  return 1.006 * tempC + humidityRatio(tempC, rhPercent, pressurePa) * (2501 + 1.86 * tempC);
}

/** Air pressure at a height above the sea, Pa (ASHRAE eq. 3). */
export function pressureAtHeightPa(metres: number): number {
  return STANDARD_PRESSURE_PA * (1 - 2.25577e-5 * metres) ** 5.2559;
}

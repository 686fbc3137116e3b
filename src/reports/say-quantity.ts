import { decimalText } from '../model/money.ts';
import type { Quantity } from '../model/quantity.ts';
import type { Manner } from './say-time.ts';
import { marked, worded } from '../words/worded.ts';

/** International foot, US gallon and avoirdupois ounce, all exact: NIST SP 811, appendix B. */
const metresPerFoot = 0.3048;
const metresPerYard = 3 * metresPerFoot;
const litresPerGallon = 3.785411784;
const ouncesPerGallon = 128;
const gramsPerOunce = 28.349523125;
const mmPerInch = 25.4;
/** 7000 grains to the avoirdupois pound, exact: NIST SP 811, appendix B; so 7 gr/lb to 1 g/kg. */
const grainsPerPound = 7000;
/** The conventional inch of mercury: NIST SP 811, appendix B. */
const paPerInchOfMercury = 3386.389;

const isUs = (manner: Pick<Manner, 'units'>) => manner.units === 'us';

function rounded(value: number, decimals = 0): string {
  const text = value.toFixed(decimals);
  return marked(/^-0(\.0+)?$/.test(text) ? text.slice(1) : text);
}

export const fahrenheit = (tempC: number): number => (tempC * 9) / 5 + 32;
export const fahrenheitApart = (kelvin: number): number => (kelvin * 9) / 5;

/** `13.2 °C` or `56 °F`. */
export function sayTemp(tempC: number, manner: Pick<Manner, 'units'>, decimals = 0): string {
  return isUs(manner) ? `${rounded(fahrenheit(tempC), decimals)} °F` : `${rounded(tempC, decimals)} °C`;
}

/** A difference of temperature: `3 °C`, `5 °F`. */
export function sayTempDifference(kelvin: number, manner: Pick<Manner, 'units'>, decimals = 1): string {
  return isUs(manner) ? `${rounded(fahrenheitApart(kelvin), decimals)} °F` : `${rounded(kelvin, decimals)} °C`;
}

export function sayPercent(percent: number, decimals = 0): string {
  return `${rounded(percent, decimals)} %`;
}

/** A chance of 0 to 1, never rounded up to certainty. */
export function sayChance(chance: number): string {
  return `${Math.floor(chance * 100 + 1e-9)} %`;
}

/** `0.9 m²` or `9.7 sq ft`. */
export function sayArea(areaM2: number, manner: Pick<Manner, 'units'>): string {
  return isUs(manner) ? worded`${rounded(areaM2 / metresPerFoot ** 2, 1)} sq ft` : `${rounded(areaM2, 2)} m²`;
}

/** Of air: `110 m³` or `3900 cu ft`. */
export function sayAir(m3: number, manner: Pick<Manner, 'units'>): string {
  return isUs(manner) ? worded`${rounded(m3 / metresPerFoot ** 3)} cu ft` : `${rounded(m3)} m³`;
}

/** `90 cm` or `35.4 in`: of pieces of furniture. */
export function sayMeasure(lengthMm: number, manner: Pick<Manner, 'units'>): string {
  const said = (value: number) => marked(String(Number(value.toFixed(1))));
  return isUs(manner) ? worded`${said(lengthMm / mmPerInch)} in` : `${said(lengthMm / 10)} cm`;
}

/** Water in the air by the mass of dry air: `7.3 g/kg` or `51 gr/lb`. */
export function sayWaterInAir(gramsPerKg: number, manner: Pick<Manner, 'units'>): string {
  return isUs(manner)
    ? worded`${rounded((gramsPerKg / 1000) * grainsPerPound)} gr/lb`
    : worded`${rounded(gramsPerKg, 1)} g/kg`;
}

/** What the air still takes up, as a pressure: `1.17 kPa` or `0.345 inHg`. */
export function sayDryingPower(vpdPa: number, manner: Pick<Manner, 'units'>): string {
  return isUs(manner)
    ? worded`${rounded(vpdPa / paPerInchOfMercury, 3)} inHg`
    : worded`${rounded(vpdPa / 1000, 2)} kPa`;
}

/** `504 g` or `17.8 oz`. */
export function sayMass(grams: number, manner: Pick<Manner, 'units'>): string {
  return isUs(manner) ? worded`${rounded(grams / gramsPerOunce, 1)} oz` : `${rounded(grams)} g`;
}

/** `0.25 L`, or `8.5 fl oz`, `1.3 gal`. */
export function sayVolume(litres: number, manner: Manner): string {
  if (!isUs(manner)) return `${rounded(litres, 2)} L`;
  const gallons = litres / litresPerGallon;
  return gallons < 1 ? worded`${rounded(gallons * ouncesPerGallon, 1)} fl oz` : worded`${rounded(gallons, 2)} gal`;
}

/** What is bought: `0.25 L`, `12 m` or `13 yd`, `7`; never rounded down. */
export function sayAmount({ value, unit }: Quantity, manner: Manner): string {
  switch (unit) {
    case 'L':
      return sayVolume(value, manner);
    case 'm':
      return isUs(manner) ? worded`${Math.ceil(value / metresPerYard - 1e-9)} yd` : `${Math.ceil(value - 1e-9)} m`;
    case 'pieces':
      return String(Math.ceil(value - 1e-9));
  }
}

/** `320.00 EUR`: minor units as the currency has them. */
export function sayMoney(minor: number, manner: Manner): string {
  return `${marked(decimalText(minor, manner.currency))} ${manner.currency}`;
}

import { minorDigits } from '../model/money.ts';
import type { Units } from '../model/shop.ts';

// The inch is 25.4 mm exactly: NIST Handbook 44 (2023), appendix C.
const MM_PER_INCH = 25.4;
const M2_PER_SQ_FT = (12 * MM_PER_INCH) ** 2 / 1e6;

function plain(value: number, decimals: number): string {
  return String(Number(value.toFixed(decimals)));
}

/** `0.9 m2` or `9.7 sq ft`, as the files take it; never nothing. */
export function writeArea(areaM2: number, units: Units): string {
  if (units === 'us') return `${plain(Math.max(0.1, areaM2 / M2_PER_SQ_FT), 1)} sq ft`;
  return `${plain(Math.max(0.01, areaM2), 2)} m2`;
}

/** `19 mm` or `0.75 in`: of boards. */
export function writeThickness(lengthMm: number, units: Units): string {
  return units === 'us' ? `${plain(lengthMm / MM_PER_INCH, 2)} in` : `${plain(lengthMm, 1)} mm`;
}

/** `90 cm` or `35.4 in`: of pieces of furniture. */
export function writeLength(lengthMm: number, units: Units): string {
  return units === 'us' ? `${plain(lengthMm / MM_PER_INCH, 1)} in` : `${plain(lengthMm / 10, 1)} cm`;
}

/** `45 EUR`, `45.50 EUR`. */
export function writeMoney(minor: number, currency: string): string {
  const digits = minorDigits(currency);
  const whole = 10 ** digits;
  return `${minor % whole === 0 ? minor / whole : (minor / whole).toFixed(digits)} ${currency}`;
}

// ISO 4217 gives most currencies two digits after the point, and these another number.
const otherDigits: ReadonlyMap<string, number> = new Map([
  ...[
    'BIF',
    'CLP',
    'DJF',
    'GNF',
    'ISK',
    'JPY',
    'KMF',
    'KRW',
    'PYG',
    'RWF',
    'UGX',
    'VND',
    'VUV',
    'XAF',
    'XOF',
    'XPF',
  ].map((code): [string, number] => [code, 0]),
  ...['BHD', 'IQD', 'JOD', 'KWD', 'LYD', 'OMR', 'TND'].map((code): [string, number] => [code, 3]),
]);

/** Digits after the point of a currency, as ISO 4217 has them: 2 makes 1 EUR 100 minor units. */
export function minorDigits(currency: string): number {
  return otherDigits.get(currency) ?? 2;
}

/** Money is whole minor units, and every share of it is reckoned in whole numbers: no binary fraction comes near it. */
export interface Fraction {
  readonly top: bigint;
  readonly bottom: bigint;
}

/** A decimal number as the digits that it was written with: 8.1 is 81/10. */
export function decimalFraction(value: number): Fraction {
  const [digits = '0', exponent = '0'] = value.toString().split('e');
  const [whole = '0', fraction = ''] = digits.split('.');
  const top = BigInt(whole + fraction);
  const shift = fraction.length - Number(exponent);
  return shift >= 0 ? { top, bottom: 10n ** BigInt(shift) } : { top: top * 10n ** BigInt(-shift), bottom: 1n };
}

/** A number of percent as a share of the whole. */
export function percentFraction(percent: number): Fraction {
  const { top, bottom } = decimalFraction(percent);
  return { top, bottom: bottom * 100n };
}

/** top / bottom to the nearest whole number, a half away from zero. */
export function roundedQuotient(top: bigint, bottom: bigint): bigint {
  const sign = top < 0n !== bottom < 0n ? -1n : 1n;
  const [a, b] = [top < 0n ? -top : top, bottom < 0n ? -bottom : bottom];
  return sign * ((2n * a + b) / (2n * b));
}

/** The share of an amount, in whole minor units. */
export function shareOf(minor: number, { top, bottom }: Fraction): number {
  return Number(roundedQuotient(BigInt(minor) * top, bottom));
}

/** An amount in equal parts, whole minor units each, which add up to it: the first ones are a unit larger. */
export function equalParts(minor: number, parts: number): number[] {
  const each = Math.floor(minor / parts);
  const over = minor - each * parts;
  return Array.from({ length: parts }, (_, i) => each + (i < over ? 1 : 0));
}

/** The amount as a plain decimal number, with all the digits that the currency has: `320.00`. */
export function decimalText(minor: number, currency: string): string {
  const digits = minorDigits(currency);
  const sign = minor < 0 ? '-' : '';
  const text = Math.abs(minor)
    .toFixed(0)
    .padStart(digits + 1, '0');
  return digits === 0 ? sign + text : `${sign}${text.slice(0, -digits)}.${text.slice(-digits)}`;
}

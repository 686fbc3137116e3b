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

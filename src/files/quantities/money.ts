import { minorDigits } from '../../model/money.ts';
import { LONGEST_QUANTITY, read, refuse, type Read } from './read.ts';
import { worded } from '../../words/worded.ts';

const LONGEST_WHOLE = 10;

export function readCurrency(text: string): Read<string> {
  const known = Intl.supportedValuesOf('currency');
  if (known.includes(text)) return read(text);
  const upper = text.slice(0, 3).toUpperCase();
  return refuse(
    worded`is no currency`,
    known.includes(upper) ? worded`write ${upper}` : worded`write a code of ISO 4217 like EUR or USD`,
  );
}

/** `240 EUR`, `18.50 EUR` as whole minor units. Reckoned on the digits: no binary fraction comes near it. */
export function readMoneyMinor(text: string, currency: string): Read<number> {
  const write = worded`write an amount like 240 ${currency}`;
  if (text.length > LONGEST_QUANTITY) return refuse(worded`is not an amount of money`, write);
  const parts = /^(\d{1,12})(?:\.(\d{1,6}))? ?([A-Za-z]{3})?$/.exec(text.trim());
  if (parts === null) return refuse(worded`is not an amount of money`, worded`${write}, without symbols or commas`);
  const [, whole = '', fraction = '', code] = parts;
  if (code === undefined) return refuse(worded`has no currency`, write);
  if (code !== currency) return refuse(worded`is not in ${currency}, the shop's currency`, write);
  if (whole.length > LONGEST_WHOLE) return refuse(worded`is too much`, write);
  const digits = minorDigits(currency);
  if (fraction.length > digits)
    return refuse(worded`has more than ${digits} digits after the point`, worded`${currency} has ${digits} of them`);
  return read(Number(whole + fraction.padEnd(digits, '0')));
}

import { amountsOf } from './amount.ts';
import { read, refuse, type Read } from './read.ts';
import { worded } from '../../words/worded.ts';

const COLDEST_C = -60;
const HOTTEST_C = 120;

function plainUnit(unit: string): string {
  return unit
    .replace(/^[°º] ?/, '')
    .replace('℃', 'C')
    .replace('℉', 'F');
}

function singleAmount(text: string): { readonly value: number; readonly unit: string } | undefined {
  const amounts = amountsOf(text);
  const [amount] = amounts ?? [];
  return amounts?.length === 1 && amount !== undefined ? amount : undefined;
}

/** `18 °C`, `64 °F` as °C. */
export function readTempC(text: string): Read<number> {
  const write = worded`write a temperature like 18 °C or 64 °F`;
  const amount = singleAmount(text);
  if (amount === undefined) return refuse(worded`is not a temperature`, write);
  const unit = plainUnit(amount.unit);
  if (unit === '') return refuse(worded`has no unit`, write);
  if (unit !== 'C' && unit !== 'F')
    return refuse(worded`is not a temperature: "${amount.unit}" is no unit for it`, write);
  const tempC = unit === 'C' ? amount.value : ((amount.value - 32) * 5) / 9;
  if (tempC < COLDEST_C || tempC > HOTTEST_C)
    return refuse(worded`lies outside ${COLDEST_C} °C to ${HOTTEST_C} °C`, write);
  return read(tempC);
}

/** A difference of temperature, `3 K`, `3 °C` or `5 °F`, as kelvins: no 32 is taken off. */
export function readDifferenceK(text: string): Read<number> {
  const write = worded`write a difference like 3 K or 5 °F`;
  const amount = singleAmount(text);
  if (amount === undefined) return refuse(worded`is not a difference of temperature`, write);
  const unit = plainUnit(amount.unit);
  if (unit === '') return refuse(worded`has no unit`, write);
  if (unit !== 'K' && unit !== 'C' && unit !== 'F')
    return refuse(worded`is not a difference of temperature: "${amount.unit}" is no unit for it`, write);
  const kelvins = unit === 'F' ? (amount.value * 5) / 9 : amount.value;
  if (kelvins < 0 || kelvins > 100) return refuse(worded`lies outside 0 K to 100 K`, write);
  return read(kelvins);
}

import type { ContainerPrice, Quantity } from '../../model/quantity.ts';
import { readLengthMm, readVolumeL } from './measure.ts';
import { readMoneyMinor } from './money.ts';
import { decimalReader } from './plain.ts';
import { mapped, read, refuse, type Read, type Reader } from './read.ts';
import { worded } from '../../words/worded.ts';

const MM_PER_M = 1000;

const readers: readonly Reader<Quantity>[] = [
  mapped(decimalReader(0, 100_000), (value) => ({ value, unit: 'pieces' as const })),
  mapped(readLengthMm, (mm) => ({ value: mm / MM_PER_M, unit: 'm' as const })),
  mapped(readVolumeL, (value) => ({ value, unit: 'L' as const })),
];

/** An amount of something that is bought: `2.5 L`, `50 m`, or a number of pieces. */
export function readAmount(text: string): Read<Quantity> {
  for (const reader of readers) {
    const result = reader(text);
    if (result.ok) return result;
  }
  return refuse(worded`is no amount`, worded`write a volume like 2.5 L, a length like 50 m, or a number of pieces`);
}

/** `38 EUR for 1 L`. */
export function readContainerPrice(text: string, currency: string): Read<ContainerPrice> {
  const [money = '', holds, ...more] = text.split(' for ');
  if (holds === undefined || more.length > 0)
    return refuse(worded`is no price of a container`, worded`write it like 38 ${currency} for 1 L`);
  const minor = readMoneyMinor(money.trim(), currency);
  if (!minor.ok) return refuse(worded`does not begin with an amount of money: it ${minor.why}`, minor.write);
  const quantity = readAmount(holds.trim());
  if (!quantity.ok) return refuse(worded`does not end in an amount`, quantity.write);
  if (quantity.value.value <= 0)
    return refuse(worded`is the price of nothing`, worded`write it like 38 ${currency} for 1 L`);
  return read({ minor: minor.value, holds: quantity.value });
}

import { percentFraction, roundedQuotient, shareOf } from '../model/money.ts';

/** What selling takes of a price, in minor units. */
export function sellingFee(priceMinor: number, feePercent: number): number {
  return shareOf(priceMinor, percentFraction(feePercent));
}

/**
 * The lowest price that, less the fee, brings the cost back; undefined where the fee takes all. The fee is rounded to
 * whole minor units, so the exact quotient may be a unit off: its neighbours are tried.
 */
export function lowestPrice(costMinor: number, feePercent: number): number | undefined {
  const { top, bottom } = percentFraction(feePercent);
  if (costMinor <= 0) return 0;
  if (top >= bottom) return undefined;
  let price = Number(roundedQuotient(BigInt(costMinor) * bottom, bottom - top));
  const brings = (p: number) => p - sellingFee(p, feePercent) >= costMinor;
  while (price > 0 && brings(price - 1)) price -= 1;
  while (!brings(price)) price += 1;
  return price;
}

/** What an amount comes to for each of some units, in whole minor units: money an hour, with `minutes` and 60. */
export function ratePer(minor: number, units: number, unitsPerOne = 1): number | undefined {
  if (units <= 0) return undefined;
  return Number(roundedQuotient(BigInt(minor) * BigInt(unitsPerOne), BigInt(Math.round(units))));
}

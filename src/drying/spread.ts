import type { Spread } from '../model/mark.ts';

/** Standard normal deviate that 95 % lie below. */
export const Z95 = 1.6448536269514722;

/**
 * The figure of a spread at a standard normal deviate `z`: typical is the median, low and high are where one in twenty
 * lies beyond, and each side is log-normal by itself (design suggestion: published spreads do not say what they hold).
 */
export function drawing({ low, typical, high }: Spread): (z: number) => number {
  if (typical <= 0 || low <= 0) return (z) => (z < 0 ? typical : typical + ((high - typical) * z) / Z95);
  const shorter = Math.log(typical / low) / Z95;
  const longer = Math.log(high / typical) / Z95;
  return (z) => typical * Math.exp(z * (z < 0 ? shorter : longer));
}

/** Standard deviation of the logarithm, the two sides taken together. */
export function logDeviation({ low, high }: Spread): number {
  return low > 0 ? Math.log(high / low) / (2 * Z95) : 0;
}

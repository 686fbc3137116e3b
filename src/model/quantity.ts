/** How much of something that is bought: litres, metres or pieces. */
export const quantityUnits = ['L', 'm', 'pieces'] as const;
export type QuantityUnit = (typeof quantityUnits)[number];

export interface Quantity {
  readonly value: number;
  readonly unit: QuantityUnit;
}

/** What one container costs, in minor units of the shop's currency. */
export interface ContainerPrice {
  readonly minor: number;
  readonly holds: Quantity;
}

/** The smallest amount that is told apart: a millilitre, a centimetre, a piece. */
export const grainsPerUnit: Readonly<Record<QuantityUnit, number>> = { L: 1000, m: 100, pieces: 1 };

/** What stays below this share of a grain is an error of reckoning, not an amount. */
const SLIP = 1e-6;

/** Whole grains that hold at least as much. */
export function grainsUp({ value, unit }: Quantity): number {
  return Math.ceil(value * grainsPerUnit[unit] - SLIP);
}

/** The nearest whole grains. */
export function grainsOf({ value, unit }: Quantity): number {
  return Math.round(value * grainsPerUnit[unit]);
}

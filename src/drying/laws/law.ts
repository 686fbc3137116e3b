/** Air that a sheet's hours hold for. */
export interface ReferenceAir {
  readonly tempC: number;
  readonly rhPercent: number;
}

/** Speed of drying in some air; 1 at the reference air. Never negative, never infinite. */
export type Rate = (tempC: number, rhPercent: number) => number;

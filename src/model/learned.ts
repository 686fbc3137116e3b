/** What a shop has learned: its own factor on given figures, a sheet's hours or a recipe's minutes. */
export interface Learned {
  readonly factor: number;
  /** On how many observations it rests. */
  readonly count: number;
  /** Standard deviation of the factor's logarithm: how unsure it still is. */
  readonly deviation: number;
}

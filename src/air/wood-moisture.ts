/**
 * Equilibrium moisture content of wood, percent of its dry mass: where wood of any species ends up in this air, not
 * when. Wood Handbook (USDA Forest Products Laboratory, FPL-GTR-190, 2010), chapter 4, equation 4-5, °C form.
 */
export function equilibriumMoisturePercent(tempC: number, rhPercent: number): number {
  const t = tempC;
  const h = Math.min(100, Math.max(0, rhPercent)) / 100;
  const w = 349 + 1.29 * t + 0.0135 * t ** 2;
  const k = 0.805 + 0.000736 * t - 0.00000273 * t ** 2;
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t ** 2;
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t ** 2;
  const kh = k * h;
  const bound = k1 * kh + 2 * k1 * k2 * kh ** 2;
  return (1800 / w) * (kh / (1 - kh) + bound / (1 + k1 * kh + k1 * k2 * kh ** 2));
}

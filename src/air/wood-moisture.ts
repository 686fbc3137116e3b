/**
 * Equilibrium moisture content of wood, percent of its dry mass: where wood of any species ends up in this air, not
 * when. Wood Handbook (USDA Forest Products Laboratory, FPL-GTR-190, 2010), chapter 4, equation 4-5, °C form.
 */
export function equilibriumMoisturePercent(tempC: number, rhPercent: number): number {
  const t = tempC;
  const h = Math.min(100, Math.max(0, rhPercent)) / 100;
  const w = 349 + t * (1.29 + 0.0135 * t);
  const k = 0.805 + t * (0.000736 - 0.00000273 * t);
  const k1 = 6.27 - t * (0.00938 + 0.000303 * t);
  const k2 = 1.91 + t * (0.0407 - 0.000293 * t);
  const kh = k * h;
  const second = k1 * k2 * kh * kh;
  return (1800 / w) * (kh / (1 - kh) + (k1 * kh + 2 * second) / (1 + k1 * kh + second));
}

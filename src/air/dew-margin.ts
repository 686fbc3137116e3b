import { saturationPressurePa, vapourPressurePa } from './psychrometrics.ts';
import type { Air } from './series.ts';

/** The surface at least this far above the dew point: ISO 8502-4 (for steel; for wood it is common practice, no source). */
export const DEW_MARGIN_K = 3;

/** Is the surface at least `marginK` above the dew (below freezing: the frost) point? */
export function clearOfDew(air: Air, surfaceC: number, marginK = DEW_MARGIN_K): boolean {
  return saturationPressurePa(surfaceC - marginK) >= vapourPressurePa(air.tempC, air.rhPercent);
}

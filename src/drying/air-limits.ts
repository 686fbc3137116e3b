import { clearOfDew } from '../air/dew-margin.ts';
import { condensationPointC } from '../air/psychrometrics.ts';
import type { Air } from '../air/series.ts';
import type { Material } from '../model/material.ts';
import { dryEnough, filmForms } from './laws/water.ts';

export type BreachCode =
  | 'air-too-cold'
  | 'air-too-warm'
  | 'surface-too-cold'
  | 'surface-too-warm'
  | 'air-too-dry'
  | 'air-too-damp'
  | 'near-dew-point'
  | 'film-does-not-form'
  | 'will-not-dry';

/** One limit that forbids a coat: what is, and what would have to be. °C, or % RH, or K above the dew point. */
export interface Breach {
  readonly code: BreachCode;
  readonly is: number;
  readonly limit: number;
}

/** Everything that forbids a coat of `material` in this air on a surface at `surfaceC`; empty if nothing does. */
export function breaches(material: Material, air: Air, surfaceC = air.tempC): readonly Breach[] {
  const found: Breach[] = [];
  const ask = (code: BreachCode, broken: boolean, is: number, limit: number): void => {
    if (broken) found.push({ code, is, limit });
  };
  const { limits, minFilmTempC } = material;
  if (limits !== undefined) {
    ask('air-too-cold', air.tempC < limits.minTempC, air.tempC, limits.minTempC);
    ask('air-too-warm', air.tempC > limits.maxTempC, air.tempC, limits.maxTempC);
    if (surfaceC !== air.tempC) {
      ask('surface-too-cold', surfaceC < limits.minTempC, surfaceC, limits.minTempC);
      ask('surface-too-warm', surfaceC > limits.maxTempC, surfaceC, limits.maxTempC);
    }
    ask('air-too-dry', air.rhPercent < limits.minRhPercent, air.rhPercent, limits.minRhPercent);
    ask('air-too-damp', air.rhPercent > limits.maxRhPercent, air.rhPercent, limits.maxRhPercent);
    if (!clearOfDew(air, surfaceC, limits.dewMarginK)) {
      const marginK = surfaceC - condensationPointC(air.tempC, air.rhPercent);
      found.push({ code: 'near-dew-point', is: marginK, limit: limits.dewMarginK });
    }
  }
  if (minFilmTempC !== undefined)
    ask('film-does-not-form', filmForms(surfaceC, minFilmTempC) === 0, surfaceC, minFilmTempC);
  if (material.mechanism === 'water') {
    const share = dryEnough(air.tempC, air.rhPercent);
    ask('will-not-dry', share < 1, air.rhPercent, 100 - (100 - air.rhPercent) / Math.max(share, 1e-6));
  }
  return found;
}

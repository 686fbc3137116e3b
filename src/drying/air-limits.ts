import { clearOfDew } from '../air/dew-margin.ts';
import { condensationPointC, saturationPressurePa, vpdPa } from '../air/psychrometrics.ts';
import type { Air } from '../air/series.ts';
import type { Material } from '../model/material.ts';
import { dryEnough, filmForms, LEAST_VPD_PA } from './laws/water.ts';

export type BreachCode =
  | 'air-too-cold'
  | 'air-too-warm'
  | 'surface-too-cold'
  | 'surface-too-warm'
  | 'air-too-dry'
  | 'air-too-damp'
  | 'near-dew-point'
  | 'film-does-not-form'
  /** Fit now, but the air gets too cold before the film has had its hours. */
  | 'cold-ahead'
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
  const { limits, minFilmTempC } = material;
  const { tempC, rhPercent } = air;
  if (limits !== undefined) {
    const { minTempC, maxTempC, minRhPercent, maxRhPercent, dewMarginK } = limits;
    if (tempC < minTempC) found.push({ code: 'air-too-cold', is: tempC, limit: minTempC });
    if (tempC > maxTempC) found.push({ code: 'air-too-warm', is: tempC, limit: maxTempC });
    const apart = surfaceC !== tempC;
    if (apart && surfaceC < minTempC) found.push({ code: 'surface-too-cold', is: surfaceC, limit: minTempC });
    if (apart && surfaceC > maxTempC) found.push({ code: 'surface-too-warm', is: surfaceC, limit: maxTempC });
    if (rhPercent < minRhPercent) found.push({ code: 'air-too-dry', is: rhPercent, limit: minRhPercent });
    if (rhPercent > maxRhPercent) found.push({ code: 'air-too-damp', is: rhPercent, limit: maxRhPercent });
    if (!clearOfDew(air, surfaceC, dewMarginK)) {
      const marginK = surfaceC - condensationPointC(tempC, rhPercent);
      found.push({ code: 'near-dew-point', is: marginK, limit: dewMarginK });
    }
  }
  if (minFilmTempC !== undefined && filmForms(surfaceC, minFilmTempC) === 0)
    found.push({ code: 'film-does-not-form', is: surfaceC, limit: minFilmTempC });
  if (material.mechanism === 'water' && dryEnough(vpdPa(tempC, rhPercent)) < 1)
    found.push({ code: 'will-not-dry', is: rhPercent, limit: mostRhToDry(tempC) });
  return found;
}

/** What air and surface may be at once, each by itself between two figures. */
export interface Box {
  readonly temp: Between;
  readonly rh: Between;
  readonly surface: Between;
}

export interface Between {
  readonly low: number;
  readonly high: number;
}

/**
 * Is any limit of `material` broken somewhere in the box? Each limit is monotone in temperature, humidity and surface, so
 * that a corner decides: where this says no, nothing is broken anywhere in the box.
 */
export function brokenIn({ limits, minFilmTempC, mechanism }: Material, { temp, rh, surface }: Box): boolean {
  if (limits !== undefined) {
    if (temp.low < limits.minTempC || temp.high > limits.maxTempC) return true;
    if (surface.low < limits.minTempC || surface.high > limits.maxTempC) return true;
    if (rh.low < limits.minRhPercent || rh.high > limits.maxRhPercent) return true;
    if (!clearOfDew({ tempC: temp.high, rhPercent: rh.high }, surface.low, limits.dewMarginK)) return true;
  }
  if (minFilmTempC !== undefined && filmForms(surface.low, minFilmTempC) === 0) return true;
  return mechanism === 'water' && dryEnough(vpdPa(temp.low, rh.high)) < 1;
}

/** The same limit broken everywhere in the box: its best corner breaks it, too. Where this says no, some of it may be fit. */
export function brokenThroughout(material: Material, { temp, rh, surface }: Box): boolean {
  return brokenIn(material, { temp: turned(temp), rh: turned(rh), surface: turned(surface) });
}

const turned = ({ low, high }: Between): Between => ({ low: high, high: low });

/** Relative humidity above which a water-borne film hardly dries at this temperature, percent. */
function mostRhToDry(tempC: number): number {
  return 100 * (1 - LEAST_VPD_PA / saturationPressurePa(tempC));
}

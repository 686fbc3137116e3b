import { vpdPa } from '../../air/psychrometrics.ts';
import { arrhenius } from './arrhenius.ts';
import type { Rate, ReferenceAir } from './law.ts';

/** Vapour-pressure deficit below which water hardly leaves a film: it "will not dry" (design suggestion). */
export const LEAST_VPD_PA = 150;

/** Above the film-forming temperature, drying comes to full speed within this much, so that no law jumps. */
const FILM_FORMS_WITHIN_K = 1;

/** 0 at saturation, 1 from the least useful deficit on: nothing gets dry in soaking air, however long it hangs. */
export function dryEnough(deficitPa: number): number {
  return Math.min(1, Math.max(0, deficitPa) / LEAST_VPD_PA);
}

/** 0 up to the film-forming (or chalk) temperature, 1 a kelvin above it (ISO 2115: below, more time does not help). */
export function filmForms(tempC: number, minFilmTempC: number | undefined): number {
  if (minFilmTempC === undefined) return 1;
  return Math.min(1, Math.max(0, (tempC - minFilmTempC) / FILM_FORMS_WITHIN_K));
}

/**
 * A water-borne film: (VPD / VPD at reference)^`humidityShare`, and the rest by Arrhenius. With share 1 it is plain mass
 * transfer, m = h (e_surface - e_air), which is good physics for the wet stage. With less, humidity fades as the film
 * closes while warmth still counts. Doubt: water loss of a polymer solution was found independent of RH up to about
 * 80 % once a dense skin forms (Huisman et al., Phys. Rev. Lett. 131 (2023) 248102); how that carries over to a thin
 * latex coat is open. Nothing dries at saturation, and nothing below the film-forming temperature.
 */
export function waterRate(
  humidityShare: number,
  activationKJPerMol: number,
  minFilmTempC: number | undefined,
  reference: ReferenceAir,
): Rate {
  const referenceVpd = vpdPa(reference.tempC, reference.rhPercent);
  return (tempC, rhPercent) => {
    const deficit = vpdPa(tempC, rhPercent);
    const gate = dryEnough(deficit) * filmForms(tempC, minFilmTempC);
    if (gate === 0) return 0;
    const air = (deficit / referenceVpd) ** humidityShare;
    return gate * air * arrhenius(activationKJPerMol, tempC, reference.tempC) ** (1 - humidityShare);
  };
}

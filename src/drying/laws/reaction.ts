import { arrhenius } from './arrhenius.ts';
import type { Rate, ReferenceAir } from './law.ts';

/**
 * Two parts that react: Arrhenius (epoxy with primary amine 55–60 kJ/mol, Thermochimica Acta 447 (2006) 167–177).
 * Doubt: near room temperature an epoxy turns glassy and stalls, so full cure in the cold comes later than this says
 * (Bashir, Coatings 13 (2023) 592).
 */
export function reactionRate(activationKJPerMol: number, reference: ReferenceAir): Rate {
  return (tempC) => arrhenius(activationKJPerMol, tempC, reference.tempC);
}

/**
 * Isocyanate that cures with the water of the air: Arrhenius times relative humidity, since what a film takes up follows
 * the water's activity. Doubt: known in kind only; by vapour pressure instead of RH the cold would slow it more.
 */
export function moistureCureRate(activationKJPerMol: number, reference: ReferenceAir): Rate {
  return (tempC, rhPercent) =>
    (arrhenius(activationKJPerMol, tempC, reference.tempC) * Math.max(0, rhPercent)) / reference.rhPercent;
}

import { arrhenius } from './arrhenius.ts';
import type { Rate, ReferenceAir } from './law.ts';

/** Damp slows drying oils a little: nothing up to 70 % RH, a fifth longer at 85 % (common practice, no source). */
function dampFactor(rhPercent: number): number {
  return 1 + (0.2 * Math.max(0, rhPercent - 70)) / 15;
}

/**
 * Oils, alkyds and what is made of them: uptake of oxygen, Arrhenius. Doubt: no single activation energy is published
 * for driers in air; 45 to 80 kJ/mol is the range met, and too fast a skin slows the through-dry (Stenberg et al., Ind.
 * Crops Prod. 21 (2005) 263–272).
 */
export function oxidationRate(activationKJPerMol: number, reference: ReferenceAir): Rate {
  const atReference = dampFactor(reference.rhPercent);
  return (tempC, rhPercent) =>
    (arrhenius(activationKJPerMol, tempC, reference.tempC) * atReference) / dampFactor(rhPercent);
}

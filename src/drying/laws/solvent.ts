import { arrhenius } from './arrhenius.ts';
import type { Rate, ReferenceAir } from './law.ts';

/**
 * Loss of solvent, by its saturation vapour pressure (Clausius–Clapeyron with the heat of vaporisation as activation:
 * ethanol 42, butyl acetate 44, toluene 38 kJ/mol, from memory). The air holds no solvent, so humidity does not enter; it
 * makes blush, which is a limit. Doubt: full hardness waits on solvent held back in the film and may scale less.
 */
export function solventRate(heatKJPerMol: number, reference: ReferenceAir): Rate {
  return (tempC) => arrhenius(heatKJPerMol, tempC, reference.tempC);
}

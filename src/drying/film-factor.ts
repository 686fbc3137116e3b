import type { Film, Material, Mechanism } from '../model/material.ts';

/**
 * By what power of its thickness a film's hours grow. What must leave or enter through the film takes the square (Fick's
 * law, textbook); what reacts throughout does not care; water on wood goes by its amount. Doubt: the first, wet stage of a drying film goes by thickness
 * itself, so the early marks of a thick coat are put on the late side, and those of a thin one on the early side.
 */
const thicknessPower: Readonly<Record<Mechanism, number>> = {
  solvent: 2,
  water: 2,
  oxidation: 2,
  'two-part': 0,
  'moisture-cure': 2,
  'pva-glue': 2,
  'hide-glue': 2,
  'wood-water': 1,
  none: 0,
};

/** Times the sheet's hours for this film: by thickness, and for a fill deeper than the sheet's by depth. */
export function filmFactor(material: Material, film: Film): number {
  const power = thicknessPower[material.mechanism];
  const { sheetDepthMm } = material;
  const depth = sheetDepthMm === undefined || film.depthMm === undefined ? 1 : film.depthMm / sheetDepthMm;
  return film.thickness ** power * Math.max(1, depth) ** power;
}

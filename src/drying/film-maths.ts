import type { Material } from '../model/material.ts';

/** What is left of a wet film, µm: the share that is solid stays (ISO 23811, superseded by ISO 3233-3). */
export function dryFilmUm(wetFilmUm: number, volumeSolidsPercent: number): number {
  return (wetFilmUm * volumeSolidsPercent) / 100;
}

/** The wet film that leaves a dry film of `dryFilmUm`, µm. */
export function wetFilmUm(dryFilm: number, volumeSolidsPercent: number): number {
  return (dryFilm * 100) / volumeSolidsPercent;
}

/** Volume solids after thinning by `thinnedPercent` of the material's own volume, percent. */
export function thinnedSolidsPercent(volumeSolidsPercent: number, thinnedPercent: number): number {
  return volumeSolidsPercent / (1 + thinnedPercent / 100);
}

/** Area that a litre covers if all of it lands, m²/L: 1000 over the wet film in µm. */
export function theoreticalSpreadM2PerL(wetFilm: number): number {
  return 1000 / wetFilm;
}

/**
 * Area that a litre covers at the sheet's film if all of it lands, m²/L: the coverage that the sheet names, else from
 * volume solids and dry film, 10 × percent / µm (ISO 3233-3:2015, from memory). Undefined where it names neither.
 */
export function sheetSpreadM2PerL({
  coverageM2PerL,
  volumeSolidsPercent,
  dryFilmUm: film,
}: Pick<Material, 'coverageM2PerL' | 'volumeSolidsPercent' | 'dryFilmUm'>): number | undefined {
  if (coverageM2PerL !== undefined) return coverageM2PerL.typical;
  if (volumeSolidsPercent === undefined || film === undefined) return undefined;
  return theoreticalSpreadM2PerL(wetFilmUm(film.typical, volumeSolidsPercent.typical));
}

/** Share of a section's area that dents and holes to be filled make. Common practice, no source. */
export const FILLED_SHARE = 0.01;

/** Share of a section's area that is spread with glue where its joints are glued. Common practice, no source. */
export const GLUED_SHARE = 0.03;

/** Litres of a filler for holes `depthMm` deep, which shrinks to its solids as it dries. */
export function fillLitres(areaM2: number, depthMm: number, volumeSolidsPercent: number): number {
  return (areaM2 * FILLED_SHARE * depthMm * 100) / volumeSolidsPercent;
}

/** Share of a material that stays in cans, cups, strainers and brushes: 5 to 15 percent, common practice, no source. */
export const USUAL_WASTE_PERCENT = 10;

/** Bare wood drinks this much of the first coat: 10 to 20 percent, common practice, no source. */
export const FIRST_COAT_LOSS = 0.15;

/**
 * Litres for `coats` coats. `spreadM2PerL` is what a litre covers if all of it lands; `transferEfficiency` (0 to 1) is
 * what lands of it. `onBareWood` adds what the first coat loses into the wood.
 */
export function litresFor(
  areaM2: number,
  coats: number,
  spreadM2PerL: number,
  transferEfficiency: number,
  onBareWood = false,
): number {
  const oneCoat = areaM2 / (spreadM2PerL * transferEfficiency);
  return coats <= 0 ? 0 : oneCoat * (coats + (onBareWood ? FIRST_COAT_LOSS / (1 - FIRST_COAT_LOSS) : 0));
}

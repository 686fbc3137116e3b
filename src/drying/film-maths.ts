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

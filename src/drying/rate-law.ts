import type { Mark } from '../model/mark.ts';
import type { Material, Mechanism } from '../model/material.ts';
import type { Rate } from './laws/law.ts';
import { oncePer } from '../once-per.ts';
import { oxidationRate } from './laws/oxidation.ts';
import { moistureCureRate, reactionRate } from './laws/reaction.ts';
import { solventRate } from './laws/solvent.ts';
import { waterRate } from './laws/water.ts';
import { woodWaterRate } from './laws/wood-water.ts';

/** A rate with a name: two materials whose laws have the same key dry at the same speed in the same air. */
export interface RateLaw {
  readonly key: string;
  readonly rate: Rate;
}

/**
 * Activation energy where the material states none, kJ/mol: water and the solvents by heat of vaporisation (from
 * memory); oxidation 50 (design suggestion, "doubles every 10 K"); two-part 57 (epoxy, Thermochimica Acta 447 (2006)
 * 167–177); moisture cure 45 (from memory).
 */
const usualActivationKJPerMol: Readonly<Record<Mechanism, number>> = {
  solvent: 40,
  water: 44,
  oxidation: 50,
  'two-part': 57,
  'moisture-cure': 45,
  'pva-glue': 38,
  'hide-glue': 38,
  'wood-water': 38,
  none: 0,
};

/**
 * How far humidity governs a mark of a water-borne film: 1 in the wet stage, fading to 0 for full cure (design
 * suggestion; see laws/water.ts for the doubt).
 */
export const humidityShare: Readonly<Record<Mark, number>> = {
  'dust-free': 1,
  touch: 1,
  tape: 0.25,
  sand: 0.5,
  recoat: 0.5,
  handle: 0.25,
  stack: 0.25,
  cure: 0,
};

/** Share of a glue line's water that leaves by the air; a closed joint loses most into the wood (design suggestion). */
const GLUE_LINE_AIR_SHARE = 0.25;
/** The same for an open, wetted surface (design suggestion). */
const OPEN_SURFACE_AIR_SHARE = 0.5;

/** The law by which `material` nears `mark`; the edges of a recoat window go by that of `recoat`. */
export const rateLaw: (material: Material, mark: Mark) => RateLaw = oncePer(lawOf);

function lawOf(material: Material, mark: Mark): RateLaw {
  const { mechanism, reference, minFilmTempC } = material;
  const activation = material.activationKJPerMol ?? usualActivationKJPerMol[mechanism];
  const air = `${String(reference.tempC)}/${String(reference.rhPercent)}`;
  const named = (rate: Rate, ...numbers: readonly (number | undefined)[]): RateLaw => ({
    key: [mechanism, air, ...numbers.map(String)].join(' '),
    rate,
  });
  switch (mechanism) {
    case 'solvent':
      return named(solventRate(activation, reference), activation);
    case 'water': {
      const share = humidityShare[mark];
      return named(waterRate(share, activation, minFilmTempC, reference), share, activation, minFilmTempC);
    }
    case 'oxidation':
      return named(oxidationRate(activation, reference), activation);
    case 'two-part':
      return named(reactionRate(activation, reference), activation);
    case 'moisture-cure':
      return named(moistureCureRate(activation, reference), activation);
    case 'pva-glue':
      return named(woodWaterRate(GLUE_LINE_AIR_SHARE, minFilmTempC, reference), minFilmTempC);
    case 'hide-glue':
    case 'wood-water':
      return named(woodWaterRate(OPEN_SURFACE_AIR_SHARE, minFilmTempC, reference), minFilmTempC);
    case 'none':
      return named(() => 1);
  }
}

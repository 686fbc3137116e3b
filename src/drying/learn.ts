import { at } from '../at.ts';
import type { AirSeries } from '../air/series.ts';
import type { Learned } from '../model/learned.ts';
import type { Sighting } from '../model/journal.ts';
import type { Mark, Spread } from '../model/mark.ts';
import type { Film, Material } from '../model/material.ts';
import type { Minute } from '../time/span.ts';
import { doseOf } from './dose.ts';
import { filmFactor } from './film-factor.ts';
import { rateLaw } from './rate-law.ts';
import { logDeviation } from './spread.ts';

/**
 * One look at the bench. `seen` and `expected` in the same unit: hours of drying gained in that air and the sheet's
 * typical hours, or minutes of work and the recipe's.
 * - `at`: it was reached just then. `by`: it had been reached. `not-yet`: it had not.
 */
export interface Observation {
  readonly kind: 'at' | 'by' | 'not-yet';
  readonly expected: number;
  readonly seen: number;
}

/** However much is seen, the factor stays inside these (design suggestion: beyond them it is another material). */
export const LEAST_FACTOR = 0.5;
export const MOST_FACTOR = 2;
/** One look differs from the next by about a fifth, as a standard deviation of the logarithm (design suggestion). */
const LOOK_DEVIATION = 0.2;
/** Even where a sheet gives no spread, a shop may differ by a tenth (design suggestion). */
const LEAST_PRIOR = 0.1;
/** How far one hand's pace may lie from the recipe's minutes before anything is seen (design suggestion). */
const PACE_PRIOR = 0.25;
/** One job differs from the next of the same minutes by about a third: pieces are not alike (design suggestion). */
const JOB_DEVIATION = 0.35;

const GRID_POINTS = 401;
const GRID_REACH = Math.log(4);

/** Abramowitz and Stegun 1964, formula 7.1.26 for the error function; wrong by at most 1.5e-7. */
function normalBelow(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const poly = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const upper = (poly * Math.exp(-x * x)) / 2;
  return z > 0 ? 1 - upper : upper;
}

/** Never quite impossible: one wrong look must not outweigh all others. */
const SLIP = 1e-3;

function likelihood({ kind, expected, seen }: Observation, logFactor: number, deviation: number): number {
  const z = (Math.log(seen / expected) - logFactor) / deviation;
  switch (kind) {
    case 'at':
      return Math.exp(-(z * z) / 2) + SLIP * SLIP;
    case 'by':
      return normalBelow(z) + SLIP;
    case 'not-yet':
      return normalBelow(-z) + SLIP;
  }
}

/**
 * The factor's mean after the observations: log-normal prior about 1 with `priorDeviation`, each look log-normal about
 * the truth, seen exactly or from one side only. Few looks move it little; many outweigh the prior.
 */
export function learn(
  observations: readonly Observation[],
  priorDeviation: number,
  lookDeviation = LOOK_DEVIATION,
): Learned {
  const useful = observations.filter((o) => o.expected > 0 && o.seen > 0);
  const points = Array.from({ length: GRID_POINTS }, (_, i) => GRID_REACH * ((2 * i) / (GRID_POINTS - 1) - 1));
  const logPosterior = points.map((logFactor) =>
    useful.reduce(
      (sum, o) => sum + Math.log(likelihood(o, logFactor, lookDeviation)),
      -((logFactor / priorDeviation) ** 2) / 2,
    ),
  );
  const most = Math.max(...logPosterior);
  const weights = logPosterior.map((value) => Math.exp(value - most));
  const meanOf = (value: (logFactor: number) => number): number => {
    const sum = points.reduce((total, point, i) => total + value(point) * at(weights, i), 0);
    return sum / weights.reduce((total, weight) => total + weight, 0);
  };
  const mean = meanOf((x) => x);
  const deviation = Math.sqrt(
    Math.max(
      0,
      meanOf((x) => (x - mean) ** 2),
    ),
  );
  const factor = Math.min(MOST_FACTOR, Math.max(LEAST_FACTOR, Math.exp(mean)));
  return { factor: useful.length === 0 ? 1 : factor, count: useful.length, deviation };
}

/** The shop's factor on a material's hours; the prior comes from the sheet's own spread. */
export function learnDrying(sheet: Spread, observations: readonly Observation[]): Learned {
  return learn(observations, Math.max(LEAST_PRIOR, logDeviation(sheet)));
}

/** One hand's factor on the recipes' minutes. */
export function learnPace(observations: readonly Observation[]): Learned {
  return learn(observations, PACE_PRIOR, JOB_DEVIATION);
}

/** The mark that a sighting speaks of where none is named. Common practice, no source. */
const markOf: Readonly<Record<Sighting, Mark>> = { wet: 'dust-free', tacky: 'touch', dry: 'touch', hard: 'handle' };

/**
 * What a sighting at `seenAt` says of a film finished at `end`: wet or tacky, its mark was not yet reached; dry or hard,
 * it was. Undefined where the material has no such mark.
 */
export function observationOf(
  material: Material,
  film: Film,
  air: AirSeries,
  end: Minute,
  seen: { readonly at: Minute; readonly sighting: Sighting; readonly mark?: Mark },
): Observation | undefined {
  const mark = seen.mark ?? markOf[seen.sighting];
  const sheet = material.marks[mark];
  if (sheet === undefined || seen.at <= end) return undefined;
  const dose = doseOf(air, rateLaw(material, mark));
  return {
    kind: seen.sighting === 'dry' || seen.sighting === 'hard' ? 'by' : 'not-yet',
    expected: sheet.typical * filmFactor(material, film),
    seen: dose.hoursAt(seen.at) - dose.hoursAt(end),
  };
}

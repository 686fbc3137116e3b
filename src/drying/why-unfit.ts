import { airAt, type AirSeries } from '../air/series.ts';
import type { Material } from '../model/material.ts';
import type { Minute } from '../time/span.ts';
import { breaches, type Breach } from './air-limits.ts';
import { coldestAhead } from './keep-above.ts';
import { surfaceOf } from './surface.ts';
import { worded } from '../words/worded.ts';

/** A breach in words. */
export interface Unfit extends Breach {
  readonly text: string;
}

const percent = (value: number): string => `${value.toFixed(0)} %`;

/** How temperatures, and differences between them, are written. */
export interface Degrees {
  readonly degrees: (tempC: number) => string;
  readonly apart: (kelvin: number) => string;
}

const metric: Degrees = {
  degrees: (tempC) => `${tempC.toFixed(1)} °C`,
  apart: (kelvin) => `${kelvin.toFixed(1)} K`,
};

function textOf({ code, is, limit }: Breach, { degrees, apart }: Degrees): string {
  switch (code) {
    case 'air-too-cold':
      return worded`air at ${degrees(is)} is colder than ${degrees(limit)}`;
    case 'air-too-warm':
      return worded`air at ${degrees(is)} is warmer than ${degrees(limit)}`;
    case 'surface-too-cold':
      return worded`surface at ${degrees(is)} is colder than ${degrees(limit)}`;
    case 'surface-too-warm':
      return worded`surface at ${degrees(is)} is warmer than ${degrees(limit)}`;
    case 'air-too-dry':
      return worded`humidity of ${percent(is)} is below ${percent(limit)}`;
    case 'air-too-damp':
      return worded`humidity of ${percent(is)} is above ${percent(limit)}`;
    case 'near-dew-point':
      return worded`surface is ${apart(is)} above the dew point; it needs ${apart(limit)}`;
    case 'film-does-not-form':
      return worded`at ${degrees(is)} no film forms; it needs more than ${degrees(limit)}`;
    case 'cold-ahead':
      return worded`air falls to ${degrees(is)} too soon; it must stay at ${degrees(limit)} or above`;
    case 'will-not-dry':
      return worded`at ${percent(is)} the air takes up hardly any water: it will not dry`;
  }
}

/** Breaches with their words, in °C and K unless others are given. */
export function inWords(found: readonly Breach[], written = metric): readonly Unfit[] {
  return found.map(({ code, is, limit }) => ({ code, is, limit, text: textOf({ code, is, limit }, written) }));
}

/**
 * All that forbids a coat of `material` at `minute`: the air then, the surface of work of `thicknessMm` which has stood in
 * it, and the cold to come.
 */
export function hindrances(
  material: Material,
  series: AirSeries,
  minute: Minute,
  thicknessMm?: number,
): readonly Breach[] {
  const air = airAt(series, minute);
  const surfaceC = thicknessMm === undefined ? air.tempC : surfaceOf(series, thicknessMm)(minute);
  const found = breaches(material, air, surfaceC);
  const keepAbove = material.limits?.keepAbove;
  if (keepAbove === undefined || found.some((b) => b.code === 'air-too-cold')) return found;
  const coldest = coldestAhead(keepAbove, series, minute);
  return coldest >= keepAbove.tempC ? found : [...found, { code: 'cold-ahead', is: coldest, limit: keepAbove.tempC }];
}

/** The same in words; empty if it may go on, as far as that minute goes. */
export function whyUnfit(
  material: Material,
  series: AirSeries,
  minute: Minute,
  thicknessMm?: number,
): readonly Unfit[] {
  return inWords(hindrances(material, series, minute, thicknessMm));
}

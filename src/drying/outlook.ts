import { condensationPointC, vpdPa } from '../air/psychrometrics.ts';
import { airAt, type Air, type AirSeries } from '../air/series.ts';
import { equilibriumMoisturePercent } from '../air/wood-moisture.ts';
import type { Material, Mechanism } from '../model/material.ts';
import type { Minute } from '../time/span.ts';
import { rateLaw } from './rate-law.ts';

/** Mechanisms whose drying speed is shown; the glues go with water in wood. */
export const shownMechanisms = ['solvent', 'water', 'oxidation', 'two-part', 'moisture-cure', 'wood-water'] as const;
export type ShownMechanism = (typeof shownMechanisms)[number];

/** The air of a room at one instant, and what it does. */
export interface AirNow extends Air {
  readonly minute: Minute;
  /** Dew point, below freezing the frost point. */
  readonly dewPointC: number;
  readonly vpdPa: number;
  readonly woodMoisturePercent: number;
  /** 1 at 23 °C and 50 % RH; of a water-borne film its wet stage, with no regard to any film-forming temperature. */
  readonly speed: Readonly<Record<ShownMechanism, number>>;
}

/** Air in which dry times are those of a material's sheet. */
export const standardAir = { tempC: 23, rhPercent: 50 };

function plain(mechanism: Mechanism): Material {
  return {
    id: mechanism,
    name: mechanism,
    family: 'cleaner',
    mechanism,
    reference: standardAir,
    marks: {},
    windows: [],
    stack: [],
    cautions: [],
    source: 'calculated',
  };
}

const laws = shownMechanisms.map((mechanism) => [mechanism, rateLaw(plain(mechanism), 'touch').rate] as const);

/** Speed of drying by mechanism in this air, 1 at 23 °C and 50 % RH. */
export function dryingSpeeds({ tempC, rhPercent }: Air): Readonly<Record<ShownMechanism, number>> {
  return Object.fromEntries(laws.map(([name, rate]) => [name, rate(tempC, rhPercent)])) as Record<
    ShownMechanism,
    number
  >;
}

export function airNow(series: AirSeries, minute: Minute): AirNow {
  const air = airAt(series, minute);
  return {
    minute,
    ...air,
    dewPointC: condensationPointC(air.tempC, air.rhPercent),
    vpdPa: vpdPa(air.tempC, air.rhPercent),
    woodMoisturePercent: equilibriumMoisturePercent(air.tempC, air.rhPercent),
    speed: dryingSpeeds(air),
  };
}

/** The air of a room every `stepMinutes` of `from` to `to`. */
export function outlook(series: AirSeries, from: Minute, to: Minute, stepMinutes = 60): readonly AirNow[] {
  const rows: AirNow[] = [];
  for (let minute = from; minute < to; minute += stepMinutes) rows.push(airNow(series, minute));
  return rows;
}

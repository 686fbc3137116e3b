import { condensationPointC, vpdPa } from '../air/psychrometrics.ts';
import { airAt, type Air, type AirSeries } from '../air/series.ts';
import { equilibriumMoisturePercent } from '../air/wood-moisture.ts';
import type { Material, Mechanism } from '../model/material.ts';
import { USUAL_THICKNESS_MM } from '../model/piece.ts';
import type { Minute } from '../time/span.ts';
import { breaches, type Breach, type BreachCode } from './air-limits.ts';
import { rateLaw } from './rate-law.ts';
import { remedied, remedyFor, type Remedy } from './remedy.ts';
import { hindrances, inWords, type Unfit } from './why-unfit.ts';

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

const standardAir = { tempC: 23, rhPercent: 50 };

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

/** A stretch of hours that are all fit for a material, or all unfit. */
export interface Stretch {
  readonly start: Minute;
  readonly end: Minute;
  readonly fit: boolean;
  /** Why the stretch is unfit, each reason once, as it is at its worst; empty if fit. */
  readonly why: readonly Unfit[];
}

/** A stretch, and what, from its start on, would make the whole of it fit; absent if fit, or if nothing would. */
export interface StretchToMend extends Stretch {
  readonly remedy?: Remedy;
}

interface Moment {
  readonly air: Air;
  readonly found: readonly Breach[];
}

interface Run {
  readonly fit: boolean;
  readonly start: Minute;
  readonly moments: Moment[];
}

function runsOf(material: Material, series: AirSeries, from: Minute, to: Minute, stepMinutes: number): readonly Run[] {
  const runs: Run[] = [];
  for (let minute = from; minute < to; minute += stepMinutes) {
    const moment = { air: airAt(series, minute), found: hindrances(material, series, minute, USUAL_THICKNESS_MM) };
    const fit = moment.found.length === 0;
    const last = runs.at(-1);
    if (last?.fit === fit) last.moments.push(moment);
    else runs.push({ fit, start: minute, moments: [moment] });
  }
  return runs;
}

function stretchOf({ fit, start, moments }: Run, end: Minute): Stretch {
  return { start, end, fit, why: fit ? [] : worstOf(moments) };
}

/**
 * The hours of `from` to `to`, looked at every `stepMinutes`, as stretches fit or unfit for `material` on a board of usual
 * thickness that has stood in the room.
 */
export function fitStretches(
  material: Material,
  series: AirSeries,
  from: Minute,
  to: Minute,
  stepMinutes: number,
): readonly Stretch[] {
  const runs = runsOf(material, series, from, to, stepMinutes);
  return runs.map((run, i) => stretchOf(run, runs[i + 1]?.start ?? to));
}

/** The same, and what would make the unfit ones fit. */
export function fitOutlook(
  material: Material,
  series: AirSeries,
  from: Minute,
  to: Minute,
  stepMinutes = 60,
): readonly StretchToMend[] {
  const runs = runsOf(material, series, from, to, stepMinutes);
  return runs.map((run, i) => {
    const remedy = run.fit ? undefined : remedyForAll(material, run.moments);
    return { ...stretchOf(run, runs[i + 1]?.start ?? to), ...(remedy === undefined ? {} : { remedy }) };
  });
}

function worstOf(moments: readonly Moment[]): readonly Unfit[] {
  const worst = new Map<BreachCode, Unfit>();
  for (const unfit of moments.flatMap(({ found }) => inWords(found))) {
    const known = worst.get(unfit.code);
    if (known === undefined || Math.abs(unfit.is - unfit.limit) > Math.abs(known.is - known.limit))
      worst.set(unfit.code, unfit);
  }
  return [...worst.values()];
}

/**
 * The strongest of the remedies of each hour, if it makes them all fit. Where it is the cold to come that forbids it, heating
 * then is part of it; where only the work is still cold, waiting is all it takes.
 */
function remedyForAll(material: Material, moments: readonly Moment[]): Remedy | undefined {
  const airs = moments.map((m) => m.air);
  const codes = new Set(moments.flatMap(({ found }) => found.map((b) => b.code)));
  let heatToC = codes.has('cold-ahead') ? (material.limits?.keepAbove?.tempC ?? -Infinity) : -Infinity;
  let dryToRhPercent = Infinity;
  const unfitAirs = airs.filter((air) => breaches(material, air).length > 0);
  if (unfitAirs.length === 0 && heatToC === -Infinity) return { wait: true };
  for (const air of unfitAirs) {
    const remedy = remedyFor(material, air);
    if (remedy === undefined) return undefined;
    heatToC = Math.max(heatToC, remedy.heatToC ?? -Infinity);
    dryToRhPercent = Math.min(dryToRhPercent, remedy.dryToRhPercent ?? Infinity);
  }
  const remedy = {
    ...(heatToC > -Infinity ? { heatToC } : {}),
    ...(dryToRhPercent < Infinity ? { dryToRhPercent } : {}),
  };
  return airs.every((air) => breaches(material, remedied(air, remedy)).length === 0) ? remedy : undefined;
}

import { real } from '../typed.ts';
import { clearOfDew, DEW_MARGIN_K } from '../air/dew-margin.ts';
import { airAt, tempAt, type AirSeries } from '../air/series.ts';
import type { Minute } from '../time/span.ts';
import { NEVER } from '../time/time-map.ts';
import { oncePer } from '../once-per.ts';

// Softwood and still indoor air, textbook values from memory: what counts is minutes against hours.
const DENSITY_KG_PER_M3 = 500;
const HEAT_J_PER_KG_K = 1600;
const CONDUCTION_W_PER_M_K = 0.12;
const SURFACE_W_PER_M2_K = 9;

/**
 * Minutes in which the surface of a board closes 63 % of its distance to the air: its heat over what passes, taken as
 * warmed from one face only (design suggestion, slow side: it lies on a bench). 19 mm gives about 40 minutes. Doubt: a
 * closed carcass lags more, a thin panel in a draught less.
 */
export function timeConstantMinutes(thicknessMm: number): number {
  const metres = thicknessMm / 1000;
  const resistance = 1 / SURFACE_W_PER_M2_K + metres / (3 * CONDUCTION_W_PER_M_K);
  return (DENSITY_KG_PER_M3 * HEAT_J_PER_KG_K * metres * resistance) / 60;
}

/** Temperature of the surface of work that stays in a room, °C. */
export type SurfaceTemp = (minute: Minute) => number;

/** What is left of a distance to the air after some minutes. */
export function left(minutes: number, lagMinutes: number): number {
  return lagMinutes > 0 ? Math.exp(-minutes / lagMinutes) : 0;
}

/** Minutes for which what is left is looked up: asked for again and again, minute by minute. */
const LOOKED_UP_MINUTES = 60;

/**
 * A surface after some minutes in air that goes straight from `fromC` by `slope` K a minute: the exact answer of Newton's
 * cooling.
 */
export function follower(
  lagMinutes: number,
): (surfaceC: number, fromC: number, slope: number, minutes: number) => number {
  const table = Float64Array.from({ length: LOOKED_UP_MINUTES + 1 }, (_, minutes) => left(minutes, lagMinutes));
  return (surfaceC, fromC, slope, minutes) => {
    const behind = slope * lagMinutes;
    return (
      fromC + slope * minutes - behind + (surfaceC - fromC + behind) * (table[minutes] ?? left(minutes, lagMinutes))
    );
  };
}

function worked(air: AirSeries, thicknessMm: number): Surface {
  const { from, stepMinutes, tempC } = air;
  const lag = timeConstantMinutes(thicknessMm);
  if (lag === 0) return { samples: () => tempC, temp: (minute) => tempAt(air, minute) };
  const followed = follower(lag);
  const slope = (i: number): number => (i + 1 < tempC.length ? (real(tempC, i + 1) - real(tempC, i)) / stepMinutes : 0);
  const samples = new Float64Array(tempC.length);
  samples[0] = real(tempC, 0);
  let known = 1;
  const upTo = (last: number): Float64Array => {
    for (; known <= last; known += 1)
      samples[known] = followed(real(samples, known - 1), real(tempC, known - 1), slope(known - 1), stepMinutes);
    return samples;
  };
  const temp = (minute: Minute): number => {
    if (minute <= from) return real(samples, 0);
    const i = Math.min(samples.length - 1, Math.floor((minute - from) / stepMinutes));
    return followed(real(upTo(i), i), real(tempC, i), slope(i), minute - from - i * stepMinutes);
  };
  return { samples: upTo, temp };
}

/** A surface that follows the air of a room. */
interface Surface {
  /** Its temperature at each sample of the air, °C, worked out at least as far as the sample of that number. */
  readonly samples: (upTo: number) => Float64Array;
  readonly temp: SurfaceTemp;
}

const surfaceFor = oncePer(worked);

/**
 * The surface of work that has stood in `air` since its beginning, when it was as warm as the air. Exact at every minute,
 * since the air goes straight from sample to sample. Worked out once for each air and thickness.
 */
export function surfaceOf(air: AirSeries, thicknessMm: number): SurfaceTemp {
  return surfaceFor(air, thicknessMm).temp;
}

/** The same at each sample of the air, °C, at least as far as is asked. */
export function surfaceSamples(air: AirSeries, thicknessMm: number): (upTo: number) => Float64Array {
  return surfaceFor(air, thicknessMm).samples;
}

/** A piece that is not fit after this long in a room will not become so by waiting. */
const LONGEST_WAIT_MINUTES = 4 * 1440;

/** Temperature of a surface that was at `startC` when it came into `air` at `broughtIn`, at a later minute, °C. */
export function surfaceTempC(
  air: AirSeries,
  thicknessMm: number,
  startC: number,
  broughtIn: Minute,
  minute: Minute,
): number {
  // The equation is linear: work that came in apart from the room's own keeps apart by what is left of it.
  const room = surfaceOf(air, thicknessMm);
  return room(minute) + (startC - room(broughtIn)) * left(minute - broughtIn, timeConstantMinutes(thicknessMm));
}

/**
 * First minute from `broughtIn` at which a surface that was at `startC` stands clear of the dew point of `air`; NEVER if
 * it does not within four days.
 */
export function coatableAfter(
  air: AirSeries,
  thicknessMm: number,
  startC: number,
  broughtIn: Minute,
  marginK = DEW_MARGIN_K,
): Minute {
  for (let now = broughtIn; now <= broughtIn + LONGEST_WAIT_MINUTES; now += 1)
    if (clearOfDew(airAt(air, now), surfaceTempC(air, thicknessMm, startC, broughtIn, now), marginK)) return now;
  return NEVER;
}

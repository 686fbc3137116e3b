import { at } from '../at.ts';
import { clearOfDew, DEW_MARGIN_K } from '../air/dew-margin.ts';
import { airAt, seriesEnd, type AirSeries } from '../air/series.ts';
import type { Minute } from '../time/span.ts';
import { NEVER, type TimeMap } from '../time/time-map.ts';
import { mapOf } from './first-minute.ts';

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

/** How often the surface is worked out. */
const STEP_MINUTES = 5;
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
  const lag = timeConstantMinutes(thicknessMm);
  let surfaceC = startC;
  for (let now = broughtIn; now < minute; now += STEP_MINUTES) {
    const step = Math.min(STEP_MINUTES, minute - now);
    surfaceC = warmed(surfaceC, airAt(air, now + step / 2).tempC, step, lag);
  }
  return surfaceC;
}

function warmed(surfaceC: number, airC: number, minutes: number, lag: number): number {
  return airC + (surfaceC - airC) * (lag > 0 ? Math.exp(-minutes / lag) : 0);
}

export interface CoatableWhen {
  readonly marginK?: number;
  /** The coat's own least temperature of the surface. */
  readonly minTempC?: number;
}

/**
 * First minute from `broughtIn` at which a surface that was at `startC` stands clear of the dew point of `air`, and is
 * warm enough; NEVER if it is not within four days.
 */
export function coatableAfter(
  air: AirSeries,
  thicknessMm: number,
  startC: number,
  broughtIn: Minute,
  { marginK = DEW_MARGIN_K, minTempC = -Infinity }: CoatableWhen = {},
): Minute {
  const lag = timeConstantMinutes(thicknessMm);
  let surfaceC = startC;
  for (let now = broughtIn; now <= broughtIn + LONGEST_WAIT_MINUTES; now += 1) {
    const around = airAt(air, now);
    if (surfaceC >= minTempC && clearOfDew(around, surfaceC, marginK)) return now;
    surfaceC = warmed(surfaceC, around.tempC, 1, lag);
  }
  return NEVER;
}

/**
 * From leaving one room to when the piece may be coated in another, as a map that never goes down: who leaves later is
 * never coated earlier, at the price of some minutes on the safe side where the first room warms up fast. Worked out for
 * each quarter of an hour of the time that both airs cover; before and after it the nearest one's wait holds.
 */
export function acclimatise(
  fromAir: AirSeries,
  toAir: AirSeries,
  thicknessMm: number,
  when: CoatableWhen = {},
): TimeMap {
  const grid = 15;
  const first = Math.max(fromAir.from, toAir.from);
  const last = Math.max(first, Math.min(seriesEnd(fromAir), seriesEnd(toAir)));
  const images = new Float64Array(Math.ceil((last - first) / grid) + 1);
  let most = -Infinity;
  for (let i = 0; i < images.length; i += 1) {
    const leaves = first + i * grid;
    most = Math.max(most, coatableAfter(toAir, thicknessMm, airAt(fromAir, leaves).tempC, leaves, when));
    images[i] = most;
  }
  const lastWait = at(images, images.length - 1) - (first + (images.length - 1) * grid);
  const firstWait = at(images, 0) - first;
  const image = (t: Minute): Minute => {
    const index = Math.ceil((t - first) / grid);
    if (index < 0) return Math.min(NEVER, t + firstWait);
    return index < images.length ? at(images, index) : Math.min(NEVER, t + lastWait);
  };
  return mapOf(image);
}

import { at } from '../at.ts';
import { real } from '../typed.ts';
import { condensationPointC } from '../air/psychrometrics.ts';
import { airAt, tempAt, type AirSeries } from '../air/series.ts';
import type { Material } from '../model/material.ts';
import type { Minute } from '../time/span.ts';
import { oncePer, oncePerPair } from '../once-per.ts';
import { NEVER, type TimeMap } from '../time/time-map.ts';
import { brokenIn } from './air-limits.ts';
import { stretchBoxes } from './air-stretches.ts';
import { mapOf } from './first-minute.ts';
import { follower, left, surfaceOf, timeConstantMinutes } from './surface.ts';

/** A surface so near to that of work which has long stood in the room is as good as it: no thermometer reads closer. */
export const SETTLED_WITHIN_K = 0.1;

/** So much is more than all roundings come to. */
const CLEARLY_K = 0.01;

/** The coldest in each minute from a sample of the air to the next, where it is not always who leaves just then, or none is cold. */
type Stretch = Float64Array | 'who-leaves' | 'none';

/**
 * How much colder than work that has long stood in the new room the coldest piece can be, that was carried there from the old
 * one at this minute or before; 0 or less. The equation is linear, so that it is enough to follow the difference.
 */
function coldestComer(fromAir: AirSeries, toAir: AirSeries, thicknessMm: number): (minute: Minute) => number {
  const [there, here] = [surfaceOf(fromAir, thicknessMm), surfaceOf(toAir, thicknessMm)];
  const lag = timeConstantMinutes(thicknessMm);
  const followed = follower(lag);
  const kept = left(1, lag);
  const first = Math.max(fromAir.from, toAir.from);
  // Both airs go straight from sample to sample, and so does the difference between them.
  const stepMinutes = Math.min(fromAir.stepMinutes, toAir.stepMinutes);
  const apartC = (minute: Minute): number => tempAt(fromAir, minute) - tempAt(toAir, minute);
  const stretches: Stretch[] = [];
  let coldest = 0;
  let nextC = apartC(first);
  const stretchFrom = (start: Minute): Stretch => {
    const surfaceC = there(start) - here(start);
    const airC = nextC;
    nextC = apartC(start + stepMinutes);
    if (coldest === 0 && Math.min(surfaceC, airC, nextC) > CLEARLY_K) return 'none';
    const slope = (nextC - airC) / stepMinutes;
    // What stays longer where it is colder is colder than what left sooner and has warmed up since.
    if (Math.max(airC, nextC) < -CLEARLY_K && surfaceC <= coldest * kept) {
      coldest = Math.min(0, followed(surfaceC, airC, slope, stepMinutes - 1));
      return 'who-leaves';
    }
    const minutes = new Float64Array(stepMinutes);
    for (let minute = 0; minute < stepMinutes; minute += 1)
      minutes[minute] = coldest = Math.min(0, followed(surfaceC, airC, slope, minute), coldest * kept);
    return minutes;
  };
  const whoLeaves = (start: Minute, minute: Minute): number => {
    const airC = apartC(start);
    const slope = (apartC(start + stepMinutes) - airC) / stepMinutes;
    return Math.min(0, followed(there(start) - here(start), airC, slope, minute - start));
  };
  return (minute) => {
    if (minute < first) return Math.min(0, there(minute) - here(minute));
    const k = Math.floor((minute - first) / stepMinutes);
    while (stretches.length <= k) stretches.push(stretchFrom(first + stretches.length * stepMinutes));
    const stretch = at(stretches, k);
    const start = first + k * stepMinutes;
    if (stretch === 'none') return 0;
    return stretch === 'who-leaves' ? whoLeaves(start, minute) : real(stretch, minute - start);
  };
}

/** Nearer than this to the dew point the vapour is looked at. */
const SURE_WITHIN_K = 0.01;

/** Dew point of the warmest and dampest that the air can be from its k-th sample to the next, °C; each worked out once. */
const dewPoints = oncePer((air: AirSeries): ((k: number) => number | undefined) => {
  const boxes = stretchBoxes(air, 0, 1);
  const dewC = new Float64Array(air.tempC.length - 1).fill(NaN);
  return (k) => {
    const known = dewC[k];
    if (known === undefined || !Number.isNaN(known)) return known;
    const { temp, rh } = boxes(k);
    return (dewC[k] = condensationPointC(temp.high, rh.high));
  };
});

const coldestFrom = oncePerPair(coldestComer);

/** Is a surface certainly warm enough for `material` from the k-th sample of the air to the next? */
function warmIn({ limits, minFilmTempC }: Material, air: AirSeries): (k: number, surfaceC: number) => boolean {
  const dewC = dewPoints(air, undefined);
  const least = Math.max(limits?.minTempC ?? -Infinity, (minFilmTempC ?? -Infinity) + SURE_WITHIN_K);
  const margin = limits?.dewMarginK;
  return (k, surfaceC) => {
    if (surfaceC < least) return false;
    const dew = dewC(k);
    return margin === undefined || (dew !== undefined && surfaceC - margin > dew + SURE_WITHIN_K);
  };
}

/** Made once for each material, thickness and way from room to room: what has been asked of it need not be worked out again. */
const wayInFor = oncePer((material: Material, thicknessMm: number) =>
  oncePerPair((fromAir: AirSeries, toAir: AirSeries) => wayIn(fromAir, toAir, thicknessMm, material)),
);

/**
 * From leaving the air of one room to when the work may be coated with `material` in that of another: never again, from
 * then on, is it the work's own cold that breaks a limit. Whether the room itself is fit is another question. Who leaves
 * later is never coated earlier, because the coldest that could have left until then is what counts.
 */
export function warmedThrough(fromAir: AirSeries, toAir: AirSeries, thicknessMm: number, material: Material): TimeMap {
  return wayInFor(material, thicknessMm)(fromAir, toAir, undefined);
}

function wayIn(fromAir: AirSeries, toAir: AirSeries, thicknessMm: number, material: Material): TimeMap {
  const lag = timeConstantMinutes(thicknessMm);
  const here = surfaceOf(toAir, thicknessMm);
  const coldest = coldestFrom(fromAir, toAir, thicknessMm);
  const broken = (minute: Minute, surfaceC: number): boolean => {
    const { tempC, rhPercent } = airAt(toAir, minute);
    return brokenIn(material, { temp: flat(tempC), rh: flat(rhPercent), surface: flat(surfaceC) });
  };
  const surelyWarm = warmIn(material, toAir);
  const leftAfter: number[] = [];
  const apartAfter = (apart: number, minutes: number) => apart * (leftAfter[minutes] ??= left(minutes, lag));
  const boxes = stretchBoxes(toAir, thicknessMm, 1);
  const samples = toAir.tempC.length - 1;
  const sampleAt = (minute: Minute) => Math.floor((minute - toAir.from) / toAir.stepMinutes);
  const worked = (leaves: Minute): Minute => {
    const apart = coldest(leaves);
    if (apart >= -SETTLED_WITHIN_K) return leaves;
    const settles = leaves + Math.ceil(lag * Math.log(-apart / SETTLED_WITHIN_K));
    const breaks = (minute: Minute, k: number): boolean => {
      const own = here(minute);
      const cold = own + apartAfter(apart, minute - leaves);
      return !surelyWarm(k, cold) && broken(minute, cold) && !broken(minute, own);
    };
    let minute = settles;
    for (let k = sampleAt(settles); k >= sampleAt(leaves); k -= 1) {
      const sample = Math.max(leaves, toAir.from + k * toAir.stepMinutes);
      // As cold as it can be up to the next sample: where that is warm enough, no minute before it is looked at.
      const atWorst = k < 0 || k >= samples ? -Infinity : boxes(k).surface.low + apartAfter(apart, sample - leaves);
      if (surelyWarm(k, atWorst)) minute = sample - 1;
      for (; minute >= sample; minute -= 1) if (breaks(minute, k)) return minute + 1;
    }
    return leaves;
  };
  const known = new Map<Minute, Minute>();
  return mapOf((leaves) => {
    if (leaves >= NEVER) return NEVER;
    let minute = known.get(leaves);
    if (minute === undefined) known.set(leaves, (minute = worked(leaves)));
    return minute;
  });
}

const flat = (value: number): { low: number; high: number } => ({ low: value, high: value });

import { real } from '../typed.ts';
import type { AirSeries } from '../air/series.ts';
import type { Box } from './air-limits.ts';
import { surfaceSamples } from './surface.ts';

type Pick = (a: number, b: number) => number;

const picks = { min: (a, b) => Math.min(a, b), max: (a, b) => Math.max(a, b) } satisfies Record<string, Pick>;

/** The picked of each `length` steps from sample to sample, both ends with them. */
function ofEach(samples: Float64Array, length: number, pick: Pick): Float64Array {
  const last = samples.length - 1;
  const picked = new Float64Array(Math.ceil(last / length));
  for (let k = 0; k < picked.length; k += 1) {
    let extreme = real(samples, k * length);
    for (let i = k * length + 1; i <= Math.min(last, (k + 1) * length); i += 1)
      extreme = pick(extreme, real(samples, i));
    picked[k] = extreme;
  }
  return picked;
}

const known = new WeakMap<Float64Array, Map<string, Float64Array>>();

/** `ofEach`, worked out once for each list of samples. */
function extremes(samples: Float64Array, length: number, pick: keyof typeof picks): Float64Array {
  let ofSamples = known.get(samples);
  if (ofSamples === undefined) known.set(samples, (ofSamples = new Map<string, Float64Array>()));
  const key = `${pick} ${String(length)}`;
  let picked = ofSamples.get(key);
  if (picked === undefined) ofSamples.set(key, (picked = ofEach(samples, length, picks[pick])));
  return picked;
}

/**
 * What air, and the surface of work of `thicknessMm` that stays in it, can be in the k-th stretch of `length` steps from
 * sample to sample. The last stretch may be shorter.
 */
export function stretchBoxes(air: AirSeries, thicknessMm: number, length: number): (k: number) => Box {
  const surface = surfaceSamples(air, thicknessMm);
  const coldest = extremes(air.tempC, length, 'min');
  const warmest = extremes(air.tempC, length, 'max');
  const driest = extremes(air.rhPercent, length, 'min');
  const dampest = extremes(air.rhPercent, length, 'max');
  const coldestSurface = extremes(surface, length, 'min');
  const warmestSurface = extremes(surface, length, 'max');
  return (k) => ({
    temp: { low: real(coldest, k), high: real(warmest, k) },
    rh: { low: real(driest, k), high: real(dampest, k) },
    // A surface that follows the air never leaves what both have been.
    surface: {
      low: Math.min(real(coldestSurface, k), real(coldest, k)),
      high: Math.max(real(warmestSurface, k), real(warmest, k)),
    },
  });
}

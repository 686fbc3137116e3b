import { real } from '../typed.ts';
import type { AirSeries } from '../air/series.ts';
import type { Box } from './air-limits.ts';
import { oncePer } from '../once-per.ts';
import { surfaceSamples } from './surface.ts';

type Pick = (a: number, b: number) => number;

/** The picked of the k-th `length` steps from sample to sample, both ends with them; each worked out when first asked for. */
function ofEach(samples: Float64Array, length: number, pick: Pick): (k: number) => number {
  const last = samples.length - 1;
  const picked = new Float64Array(Math.ceil(last / length)).fill(NaN);
  return (k) => {
    const known = real(picked, k);
    if (!Number.isNaN(known)) return known;
    let extreme = real(samples, k * length);
    for (let i = k * length + 1; i <= Math.min(last, (k + 1) * length); i += 1)
      extreme = pick(extreme, real(samples, i));
    picked[k] = extreme;
    return extreme;
  };
}

const leastOfEach = oncePer((samples: Float64Array, length: number) => ofEach(samples, length, Math.min));
const mostOfEach = oncePer((samples: Float64Array, length: number) => ofEach(samples, length, Math.max));

/**
 * What air, and the surface of work of `thicknessMm` that stays in it, can be in the k-th stretch of `length` steps from
 * sample to sample. The last stretch may be shorter.
 */
export function stretchBoxes(air: AirSeries, thicknessMm: number, length: number): (k: number) => Box {
  const surfaceUpTo = surfaceSamples(air, thicknessMm);
  const surface = surfaceUpTo(0);
  const coldest = leastOfEach(air.tempC, length);
  const warmest = mostOfEach(air.tempC, length);
  const driest = leastOfEach(air.rhPercent, length);
  const dampest = mostOfEach(air.rhPercent, length);
  const coldestSurface = leastOfEach(surface, length);
  const warmestSurface = mostOfEach(surface, length);
  return (k) => {
    surfaceUpTo(Math.min(surface.length - 1, (k + 1) * length));
    return {
      temp: { low: coldest(k), high: warmest(k) },
      rh: { low: driest(k), high: dampest(k) },
      // A surface that follows the air never leaves what both have been.
      surface: { low: Math.min(coldestSurface(k), coldest(k)), high: Math.max(warmestSurface(k), warmest(k)) },
    };
  };
}

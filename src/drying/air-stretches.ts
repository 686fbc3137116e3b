import { at } from '../at.ts';
import { condensationPointC, vpdPa } from '../air/psychrometrics.ts';
import type { AirSeries } from '../air/series.ts';

/** The worst that the air of a room does between each of its samples and the next, for any material. */
export interface AirStretches {
  /** Dew (below freezing: frost) point of the warmest and dampest mixture, °C. */
  readonly dewC: Float64Array;
  /** Vapour-pressure deficit of the coldest and dampest mixture, Pa. */
  readonly deficitPa: Float64Array;
}

function workedOut({ tempC, rhPercent }: AirSeries): AirStretches {
  const length = tempC.length - 1;
  const [dewC, deficitPa] = [new Float64Array(length), new Float64Array(length)];
  for (let k = 0; k < length; k += 1) {
    const dampest = Math.max(at(rhPercent, k), at(rhPercent, k + 1));
    dewC[k] = condensationPointC(Math.max(at(tempC, k), at(tempC, k + 1)), dampest);
    deficitPa[k] = vpdPa(Math.min(at(tempC, k), at(tempC, k + 1)), dampest);
  }
  return { dewC, deficitPa };
}

const known = new WeakMap<AirSeries, AirStretches>();

/** Worked out once for each air. */
export function airStretches(air: AirSeries): AirStretches {
  let stretches = known.get(air);
  if (stretches === undefined) known.set(air, (stretches = workedOut(air)));
  return stretches;
}

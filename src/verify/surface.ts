import { airAt, type AirSeries } from '../air/series.ts';
import { timeConstantMinutes } from '../drying/surface.ts';
import type { Minute } from '../time/span.ts';

/** By then a surface has forgotten how warm it began: what is left of 40 K is less than a millionth of a kelvin. */
const FORGOTTEN = 18;

/** Where the surface of some work is known to have been, °C. */
interface Known {
  readonly minute: Minute;
  readonly surfaceC: number;
}

/** Surface of work that has long stood in `air`, at `minute`. */
export function surfaceStanding(air: AirSeries, thicknessMm: number | undefined, minute: Minute): Known {
  const lag = timeConstantMinutes(thicknessMm ?? 0);
  const from = Math.min(minute, Math.max(air.from, Math.floor(minute - FORGOTTEN * lag)));
  const walk = surfaceFrom(air, thicknessMm, { minute: from, surfaceC: airAt(air, from).tempC });
  return { minute, surfaceC: walk(minute) };
}

/**
 * The surface from where it is known on, walked minute by minute: the air goes straight from one minute to the next, and
 * over such a piece Newton's cooling has an exact answer. Ask for minutes in order.
 */
export function surfaceFrom(air: AirSeries, thicknessMm: number | undefined, known: Known): (minute: Minute) => number {
  const lag = timeConstantMinutes(thicknessMm ?? 0);
  if (lag === 0) return (minute) => airAt(air, minute).tempC;
  const kept = Math.exp(-1 / lag);
  let { minute: now, surfaceC } = known;
  let airC = airAt(air, now).tempC;
  return (minute) => {
    for (; now < minute; now += 1) {
      const next = airAt(air, now + 1).tempC;
      const behind = (next - airC) * lag;
      surfaceC = next - behind + (surfaceC - airC + behind) * kept;
      airC = next;
    }
    return surfaceC;
  };
}

import { tempAt, type AirSeries } from '../air/series.ts';
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
  const walk = surfaceFrom(air, thicknessMm, { minute: from, surfaceC: tempAt(air, from) });
  return { minute, surfaceC: walk(minute) };
}

/**
 * The surface from where it is known on, walked from sample to sample of the air: it goes straight between two, and over
 * such a piece Newton's cooling has an exact answer. Ask for minutes in order.
 */
export function surfaceFrom(air: AirSeries, thicknessMm: number | undefined, known: Known): (minute: Minute) => number {
  const lag = timeConstantMinutes(thicknessMm ?? 0);
  if (lag === 0) return (minute) => tempAt(air, minute);
  const keptOfAMinute = Math.exp(-1 / lag);
  let { minute: now, surfaceC } = known;
  let airC = tempAt(air, now);
  return (minute) => {
    while (now < minute) {
      const next = Math.min(minute, nextSample(air, now));
      const passed = next - now;
      const nextC = tempAt(air, next);
      const behind = ((nextC - airC) / passed) * lag;
      const kept = passed === 1 ? keptOfAMinute : Math.exp(-passed / lag);
      surfaceC = nextC - behind + (surfaceC - airC + behind) * kept;
      airC = nextC;
      now = next;
    }
    return surfaceC;
  };
}

/** The first sample of the air after `minute`; past the last one, where the air stays, as if it had more. */
export function nextSample({ from, stepMinutes }: AirSeries, minute: Minute): Minute {
  return from + (Math.floor((minute - from) / stepMinutes) + 1) * stepMinutes;
}

import type { Minute } from '../time/span.ts';
import { at } from '../at.ts';
import { rhFromVapour, vapourPressurePa } from './psychrometrics.ts';
import type { Air } from './series.ts';
import { clockReader } from './wall-clock.ts';

const DAY = 1440;
/** The day is warmest at 15:00 on the wall clock (common practice, no source). */
const WARMEST = 15 * 60;

interface CurvePoint extends Air {
  readonly clock: number;
}

function mix(a: Air, b: Air, share: number): Air {
  return {
    tempC: a.tempC + (b.tempC - a.tempC) * share,
    rhPercent: a.rhPercent + (b.rhPercent - a.rhPercent) * share,
  };
}

/** One day's curve repeated: straight lines between its points, also over midnight. */
export function dailyAir(curve: readonly CurvePoint[], zone: string): (minute: Minute) => Air {
  const points = [...curve].sort((a, b) => a.clock - b.clock);
  const first = at(points, 0);
  const last = at(points, points.length - 1);
  const round = [{ ...last, clock: last.clock - DAY }, ...points, { ...first, clock: first.clock + DAY }];
  const read = clockReader(zone);
  return (minute) => {
    const { clock } = read(minute);
    const next = round.findIndex((p) => p.clock > clock);
    const a = at(round, next - 1);
    const b = at(round, next);
    return mix(a, b, (clock - a.clock) / (b.clock - a.clock));
  };
}

/**
 * Monthly means: straight lines from the middle of one month to that of the next, with the day's swing (warmest less
 * coldest) as a cosine. The water in the air stays the same through the day, so RH falls as the day warms.
 */
export function monthlyAir(
  months: readonly (Air & { readonly swingK?: number })[],
  zone: string,
): (minute: Minute) => Air {
  const read = clockReader(zone);
  return (minute) => {
    const { clock, yearPosition } = read(minute);
    const a = at(months, Math.floor(yearPosition) % 12);
    const b = at(months, (Math.floor(yearPosition) + 1) % 12);
    const share = yearPosition % 1;
    const mean = mix(a, b, share);
    const swing = (a.swingK ?? 0) * (1 - share) + (b.swingK ?? 0) * share;
    const tempC = mean.tempC + (swing / 2) * Math.cos((2 * Math.PI * (clock - WARMEST)) / DAY);
    return { tempC, rhPercent: rhFromVapour(tempC, vapourPressurePa(mean.tempC, mean.rhPercent)) };
  };
}

import { real } from '../typed.ts';
import { airAt, seriesEnd, type AirSeries } from '../air/series.ts';
import type { Minute } from '../time/span.ts';
import { oncePer } from '../once-per.ts';
import type { RateLaw } from './rate-law.ts';

const DAY = 1440;
/** A rate is worked out this often, and taken as a straight line between. */
const NODE_MINUTES = 3;
/** A rate that bends less than this share of itself between two samples of the air goes smoothly there. */
const SMOOTH = 1e-3;
/** Longer stretches than this many nodes are not taken as smooth. */
const MOST_SMOOTH_NODES = 10;
/** Hours of drying are filled in as far as somebody asks, and this much further. */
const CHUNK_MINUTES = 2 * DAY;
/** A mark that is not reached this long after the end of the air's record never is. */
const LAST_MINUTES_AFTER = 400 * DAY;

/**
 * Hours at reference air that a film gains up to each minute: the integral of its rate over a room's air. Never
 * decreases. Past the end of the air the mean speed of its last 24 hours goes on; before its beginning, that of its
 * first 24.
 */
export interface Dose {
  /** Hours gained from the series' start to `minute`; negative before it. */
  hoursAt(minute: Minute): number;
  /** The last minute at which a mark may be reached. */
  readonly last: Minute;
}

/** Builds the integral bit by bit, on demand. `nodeMinutes` is for the test that the step does not matter. */
export function integrate(air: AirSeries, law: RateLaw, nodeMinutes = NODE_MINUTES): Dose {
  const { from, tempC, rhPercent } = air;
  const length = seriesEnd(air) - from;
  const count = Math.ceil(length / nodeMinutes);
  const hours = new Float64Array(count + 1);
  const rates = new Float64Array(count + 1);
  let known = 0;
  const first = airAt(air, from);
  rates[0] = law.rate(first.tempC, first.rhPercent);

  /** Sums minute by minute, so that the sum never goes down, whatever rounding does. */
  const sumTo = (node: number, minutes: number): number => {
    const step = Math.min(nodeMinutes, length - node * nodeMinutes);
    const rate = real(rates, node);
    const slope = (real(rates, node + 1) - rate) / step;
    let total = real(hours, node);
    for (let k = 0.5; k < minutes; k += 1) total += (rate + slope * k) / 60;
    return total;
  };
  const rateAt = (minutes: number): number => {
    const then = airAt(air, from + Math.min(length, minutes));
    return law.rate(then.tempC, then.rhPercent);
  };
  /** Past its record the air of a room repeats day by day, and so do the rates. */
  const fillAsTheDayBefore = (nodes: number): boolean => {
    const sample = known / nodes;
    const before = sample - DAY / air.stepMinutes;
    if (!Number.isInteger(sample) || before < 0) return false;
    for (let k = 0; k < 2; k += 1) {
      if (real(tempC, sample + k) !== real(tempC, before + k)) return false;
      if (real(rhPercent, sample + k) !== real(rhPercent, before + k)) return false;
    }
    rates.copyWithin(known + 1, before * nodes + 1, (before + 1) * nodes + 1);
    return true;
  };
  /** Nodes of one stretch between two samples of the air, where the rate goes so smoothly that three looks tell all. */
  const fillSmoothly = (nodes: number): boolean => {
    const sample = known / nodes;
    if (!Number.isInteger(sample)) return false;
    const [nearC, farC] = [real(tempC, sample), real(tempC, sample + 1)];
    const [nearRh, farRh] = [real(rhPercent, sample), real(rhPercent, sample + 1)];
    const near = real(rates, known);
    const middle = law.rate((nearC + farC) / 2, (nearRh + farRh) / 2);
    const far = law.rate(farC, farRh);
    const bend = middle - (near + far) / 2;
    if (Math.abs(bend) > SMOOTH * Math.max(near, far)) return false;
    for (let k = 1; k <= nodes; k += 1) {
      const share = k / nodes;
      rates[known + k] = Math.max(0, near + (far - near) * share + 4 * bend * share * (1 - share));
    }
    return true;
  };
  const nodesToSample = air.stepMinutes / nodeMinutes;
  const smoothNodes = Number.isInteger(nodesToSample) && nodesToSample <= MOST_SMOOTH_NODES ? nodesToSample : 0;
  const extendTo = (wanted: number): void => {
    const goal = Math.min(count, Math.ceil((wanted + CHUNK_MINUTES) / nodeMinutes));
    while (known < goal) {
      const whole = smoothNodes > 2 && (fillAsTheDayBefore(smoothNodes) || fillSmoothly(smoothNodes));
      const nodes = whole ? smoothNodes : 1;
      if (nodes === 1) rates[known + 1] = rateAt((known + 1) * nodeMinutes);
      for (let k = 0; k < nodes; k += 1) {
        hours[known + 1] = sumTo(known, Math.min(nodeMinutes, length - known * nodeMinutes));
        known += 1;
      }
    }
  };
  const within = (k: number): number => {
    const node = Math.floor(k / nodeMinutes);
    if (node >= known && known < count) extendTo(k);
    return node === count ? real(hours, node) : sumTo(node, k - node * nodeMinutes);
  };

  const day = Math.min(DAY, length);
  let speedBefore: number | undefined;
  let speedAfter: number | undefined;
  return {
    last: from + length + LAST_MINUTES_AFTER,
    hoursAt(minute) {
      const k = minute - from;
      if (k < 0) return k * (speedBefore ??= within(day) / day);
      if (k <= length) return within(k);
      const total = within(length);
      return total + (k - length) * (speedAfter ??= (total - within(length - day)) / day);
    },
  };
}

/** One integral for each law in each room's air, made when first asked for. */
export const doseOf = oncePer<AirSeries, RateLaw, Dose>(
  (air, law) => integrate(air, law),
  (law) => law.key,
);

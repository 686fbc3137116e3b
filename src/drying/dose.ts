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
/** Hours of drying are summed up by the day, and only for the days that somebody asks about. */
const CHUNK_MINUTES = DAY;
/** A mark that is not reached this long after the end of the air's record never is. */
const LAST_MINUTES_AFTER = 400 * DAY;

/** Sums of days are whole multiples of this, so that they come out the same from whichever day they are counted. */
const GRAIN_HOURS = 2 ** -36;

/**
 * Hours at reference air that a film gains up to each minute: the integral of its rate over a room's air. Never
 * decreases. It counts from whenever it was first asked for: only differences say anything. Past the end of the air the mean
 * speed of its last 24 hours goes on; before its beginning, that of its first 24.
 */
export interface Dose {
  hoursAt(minute: Minute): number;
  /** The last minute at which a mark may be reached. */
  readonly last: Minute;
}

/** A dose by its days, which the same air elsewhere can share. */
export interface DailyDose extends Dose {
  /** That of number `k`, counted from the beginning of the air. */
  day(k: number): DaySum;
}

/** The dose of air that is the same but from the sample of number `first` up to that of number `end`. */
interface Usual {
  readonly dose: DailyDose;
  readonly first: number;
  readonly end: number;
}

interface DaySum {
  /** At each node of the day, the last one being the first of the next day. */
  readonly rates: Float64Array;
  /** At each node, from the start of the day. */
  readonly hours: Float64Array;
  readonly total: number;
}

/**
 * Builds the integral bit by bit, on demand. `nodeMinutes` is for the test that the step does not matter.
 * @param usual what to go by on days on which the air is that of another
 */
export function integrate(air: AirSeries, law: RateLaw, nodeMinutes = NODE_MINUTES, usual?: Usual): DailyDose {
  const { from, tempC, rhPercent } = air;
  const length = seriesEnd(air) - from;
  const count = Math.ceil(length / nodeMinutes);
  const perChunk = Math.round(CHUNK_MINUTES / nodeMinutes);
  const chunks = Math.ceil(count / perChunk);
  const rates = new Float64Array(count + 1);
  /** From the start of the node's day. */
  const hours = new Float64Array(count + 1);
  const totals = new Float64Array(chunks);
  const before = new Float64Array(chunks);
  /** The days summed up so far are those from `first` up to `end`. */
  let [first, end] = [0, 0];

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
  const fillAsTheDayBefore = (node: number, nodes: number): boolean => {
    const sample = node / nodes;
    const yesterday = sample - DAY / air.stepMinutes;
    if (!Number.isInteger(sample) || yesterday * nodes < first * perChunk) return false;
    for (let k = 0; k < 2; k += 1) {
      if (real(tempC, sample + k) !== real(tempC, yesterday + k)) return false;
      if (real(rhPercent, sample + k) !== real(rhPercent, yesterday + k)) return false;
    }
    rates.copyWithin(node + 1, yesterday * nodes + 1, (yesterday + 1) * nodes + 1);
    return true;
  };
  /** Nodes of one stretch between two samples of the air, where the rate goes so smoothly that three looks tell all. */
  const fillSmoothly = (node: number, nodes: number): boolean => {
    const sample = node / nodes;
    if (!Number.isInteger(sample)) return false;
    const [nearC, farC] = [real(tempC, sample), real(tempC, sample + 1)];
    const [nearRh, farRh] = [real(rhPercent, sample), real(rhPercent, sample + 1)];
    const near = real(rates, node);
    const middle = law.rate((nearC + farC) / 2, (nearRh + farRh) / 2);
    const far = law.rate(farC, farRh);
    const bend = middle - (near + far) / 2;
    if (Math.abs(bend) > SMOOTH * Math.max(near, far)) return false;
    for (let k = 1; k < nodes; k += 1) {
      const share = k / nodes;
      rates[node + k] = Math.max(0, near + (far - near) * share + 4 * bend * share * (1 - share));
    }
    rates[node + nodes] = far;
    return true;
  };
  const nodesToSample = air.stepMinutes / nodeMinutes;
  const smoothNodes = Number.isInteger(nodesToSample) && nodesToSample <= MOST_SMOOTH_NODES ? nodesToSample : 0;
  const samplesADay = CHUNK_MINUTES / air.stepMinutes;
  const isAsUsual = (chunk: number, { first, end }: Usual): boolean =>
    (chunk + 1) * samplesADay < first || chunk * samplesADay >= end;
  const fill = (chunk: number): void => {
    const goal = Math.min(count, (chunk + 1) * perChunk);
    if (usual !== undefined && isAsUsual(chunk, usual)) {
      const day = usual.dose.day(chunk);
      rates.set(day.rates, chunk * perChunk);
      hours.set(day.hours, chunk * perChunk);
      totals[chunk] = day.total;
      return;
    }
    let node = chunk * perChunk;
    let total = 0;
    rates[node] = rateAt(node * nodeMinutes);
    while (node < goal) {
      const fits = smoothNodes > 2 && node + smoothNodes <= goal;
      const whole = fits && (fillAsTheDayBefore(node, smoothNodes) || fillSmoothly(node, smoothNodes));
      const nodes = whole ? smoothNodes : 1;
      if (nodes === 1) rates[node + 1] = rateAt((node + 1) * nodeMinutes);
      for (let k = 0; k < nodes; k += 1) {
        hours[node] = total;
        total = sumTo(node, Math.min(nodeMinutes, length - node * nodeMinutes));
        node += 1;
      }
    }
    totals[chunk] = total;
  };
  const inGrains = (value: number): number => Math.round(value / GRAIN_HOURS) * GRAIN_HOURS;
  const sumUpWith = (chunk: number): void => {
    if (first === end) [first, end] = [chunk, chunk];
    while (first > chunk) {
      fill(first - 1);
      before[first - 1] = real(before, first) - inGrains(real(totals, first - 1));
      first -= 1;
    }
    while (end <= chunk) {
      fill(end);
      if (end > first) before[end] = real(before, end - 1) + inGrains(real(totals, end - 1));
      end += 1;
    }
  };
  const within = (k: number): number => {
    const node = Math.floor(k / nodeMinutes);
    const chunk = Math.min(chunks - 1, Math.floor(node / perChunk));
    if (chunk < first || chunk >= end) sumUpWith(chunk);
    return real(before, chunk) + inGrains(node === count ? real(totals, chunk) : sumTo(node, k - node * nodeMinutes));
  };

  const day = Math.min(DAY, length);
  let speedBefore: number | undefined;
  let speedAfter: number | undefined;
  return {
    last: from + length + LAST_MINUTES_AFTER,
    day(k) {
      if (k < first || k >= end) sumUpWith(k);
      const [node, next] = [k * perChunk, Math.min(count, (k + 1) * perChunk)];
      return { rates: rates.subarray(node, next + 1), hours: hours.subarray(node, next), total: real(totals, k) };
    },
    hoursAt(minute) {
      const k = minute - from;
      if (k >= 0 && k <= length) return within(k);
      if (k < 0) return within(0) + inGrains(k * (speedBefore ??= (within(day) - within(0)) / day));
      const total = within(length);
      return total + inGrains((k - length) * (speedAfter ??= (total - within(length - day)) / day));
    },
  };
}

/** One integral for each law in each room's air, made when first asked for. */
export const doseOf: (air: AirSeries, law: RateLaw) => DailyDose = oncePer<AirSeries, RateLaw, DailyDose>(
  (air, law) => integrate(air, law, NODE_MINUTES, air.but && { ...air.but, dose: doseOf(air.but.usual, law) }),
  (law) => law.key,
);

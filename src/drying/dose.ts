import { at } from '../at.ts';
import { real } from '../typed.ts';
import { airAt, seriesEnd, type AirSeries } from '../air/series.ts';
import type { Minute } from '../time/span.ts';
import { oncePer } from '../once-per.ts';
import { ALWAYS, NEVER } from '../time/time-map.ts';
import type { RateLaw } from './rate-law.ts';

/** Hours of drying are summed up by the day, and only for the days that somebody asks about. */
const DAY = 1440;
/** A rate is worked out this often, and taken as a straight line between. */
const NODE_MINUTES = 3;
/** A rate that bends less than this share of itself between two samples of the air goes smoothly there. */
const SMOOTH = 1e-3;
/** Longer stretches than this many nodes are not taken as smooth. */
const MOST_SMOOTH_NODES = 10;
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
  /** Minutes around this one that can be asked about, once it has been, with no more days to sum up. */
  knownAround(minute: Minute): { readonly first: Minute; readonly last: Minute };
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

const noDay: DaySum = { rates: new Float64Array(), hours: new Float64Array(), total: 0 };

/**
 * Builds the integral bit by bit, on demand. `nodeMinutes` is for the test that the step does not matter.
 * @param usual what to go by on days on which the air is that of another
 */
export function integrate(air: AirSeries, law: RateLaw, nodeMinutes = NODE_MINUTES, usual?: Usual): DailyDose {
  const { from, tempC, rhPercent } = air;
  const length = seriesEnd(air) - from;
  const count = Math.ceil(length / nodeMinutes);
  const perDay = Math.round(DAY / nodeMinutes);
  const dayCount = Math.ceil(count / perDay);
  const days: DaySum[] = Array.from({ length: dayCount }, () => noDay);
  const before = new Float64Array(dayCount);
  /** The days summed up so far are those from `first` up to `end`. */
  let [first, end] = [0, 0];

  const rateAt = (minutes: number): number => {
    const then = airAt(air, from + Math.min(length, minutes));
    return law.rate(then.tempC, then.rhPercent);
  };
  /** Minutes from a node to the next. */
  const stepAt = (node: number): number => Math.min(nodeMinutes, length - node * nodeMinutes);
  /** Sums minute by minute, so that the sum never goes down, whatever rounding does. */
  const sumTo = (k: number, node: number, minutes: number): number => {
    const { rates, hours } = at(days, k);
    const own = node - k * perDay;
    const rate = real(rates, own);
    const slope = (real(rates, own + 1) - rate) / stepAt(node);
    let total = real(hours, own);
    for (let m = 0.5; m < minutes; m += 1) total += (rate + slope * m) / 60;
    return total;
  };
  const nodesToSample = air.stepMinutes / nodeMinutes;
  const smoothNodes = Number.isInteger(nodesToSample) && nodesToSample <= MOST_SMOOTH_NODES ? nodesToSample : 0;
  const samplesADay = DAY / air.stepMinutes;
  /** Past its record the air of a room repeats day by day, and so does all that follows from it. */
  const isAsTheDayBefore = (k: number): boolean => {
    if (k <= first || k > end || !Number.isInteger(samplesADay) || (k + 1) * perDay > count) return false;
    for (let sample = k * samplesADay; sample <= (k + 1) * samplesADay; sample += 1) {
      if (real(tempC, sample) !== real(tempC, sample - samplesADay)) return false;
      if (real(rhPercent, sample) !== real(rhPercent, sample - samplesADay)) return false;
    }
    return true;
  };
  const isAsUsual = (k: number, { first, end }: Usual): boolean =>
    (k + 1) * samplesADay < first || k * samplesADay >= end;
  /** Nodes of one stretch between two samples of the air, where the rate goes so smoothly that three looks tell all. */
  const fillSmoothly = (rates: Float64Array, own: number, sample: number): boolean => {
    const [nearC, farC] = [real(tempC, sample), real(tempC, sample + 1)];
    const [nearRh, farRh] = [real(rhPercent, sample), real(rhPercent, sample + 1)];
    const near = real(rates, own);
    const middle = law.rate((nearC + farC) / 2, (nearRh + farRh) / 2);
    const far = law.rate(farC, farRh);
    const bend = middle - (near + far) / 2;
    if (Math.abs(bend) > SMOOTH * Math.max(near, far)) return false;
    for (let m = 1; m < smoothNodes; m += 1) {
      const share = m / smoothNodes;
      rates[own + m] = Math.max(0, near + (far - near) * share + 4 * bend * share * (1 - share));
    }
    rates[own + smoothNodes] = far;
    return true;
  };
  const ratesOf = (start: number, nodes: number): Float64Array => {
    const rates = new Float64Array(nodes + 1);
    rates[0] = rateAt(start * nodeMinutes);
    for (let own = 0; own < nodes;) {
      const fits = smoothNodes > 2 && (start + own) % smoothNodes === 0 && own + smoothNodes <= nodes;
      if (fits && fillSmoothly(rates, own, (start + own) / smoothNodes)) own += smoothNodes;
      else {
        own += 1;
        rates[own] = rateAt((start + own) * nodeMinutes);
      }
    }
    return rates;
  };
  const summedUp = (k: number): DaySum => {
    if (usual !== undefined && isAsUsual(k, usual)) return usual.dose.day(k);
    if (isAsTheDayBefore(k)) return at(days, k - 1);
    const start = k * perDay;
    const nodes = Math.min(count - start, perDay);
    const rates = ratesOf(start, nodes);
    const hours = new Float64Array(nodes);
    let total = 0;
    for (let own = 0; own < nodes; own += 1) {
      hours[own] = total;
      const step = stepAt(start + own);
      const rate = real(rates, own);
      const slope = (real(rates, own + 1) - rate) / step;
      for (let m = 0.5; m < step; m += 1) total += (rate + slope * m) / 60;
    }
    return { rates, hours, total };
  };
  const inGrains = (value: number): number => Math.round(value / GRAIN_HOURS) * GRAIN_HOURS;
  const sumUpWith = (k: number): void => {
    if (first === end) [first, end] = [k, k];
    while (first > k) {
      days[first - 1] = summedUp(first - 1);
      before[first - 1] = real(before, first) - inGrains(at(days, first - 1).total);
      first -= 1;
    }
    while (end <= k) {
      days[end] = summedUp(end);
      if (end > first) before[end] = real(before, end - 1) + inGrains(at(days, end - 1).total);
      end += 1;
    }
  };
  const within = (minutes: number): number => {
    const node = Math.floor(minutes / nodeMinutes);
    const k = Math.min(dayCount - 1, Math.floor(node / perDay));
    if (k < first || k >= end) sumUpWith(k);
    const own = node === count ? at(days, k).total : sumTo(k, node, minutes - node * nodeMinutes);
    return real(before, k) + inGrains(own);
  };

  const aDay = Math.min(DAY, length);
  let speedBefore: number | undefined;
  let speedAfter: number | undefined;
  return {
    last: from + length + LAST_MINUTES_AFTER,
    day(k) {
      if (k < first || k >= end) sumUpWith(k);
      return at(days, k);
    },
    knownAround(minute) {
      const k = minute - from;
      if (k < 0) return { first: ALWAYS, last: from - 1 };
      if (k > length) return { first: from + length + 1, last: NEVER };
      return { first: from + first * DAY, last: from + (end === dayCount ? length : end * DAY - 1) };
    },
    hoursAt(minute) {
      const k = minute - from;
      if (k >= 0 && k <= length) return within(k);
      if (k < 0) return within(0) + inGrains(k * (speedBefore ??= (within(aDay) - within(0)) / aDay));
      const total = within(length);
      return total + inGrains((k - length) * (speedAfter ??= (total - within(length - aDay)) / aDay));
    },
  };
}

/** One integral for each law in each room's air, made when first asked for. */
export const doseOf: (air: AirSeries, law: RateLaw) => DailyDose = oncePer<AirSeries, RateLaw, DailyDose>(
  (air, law) => integrate(air, law, NODE_MINUTES, air.but && { ...air.but, dose: doseOf(air.but.usual, law) }),
  (law) => law.key,
);

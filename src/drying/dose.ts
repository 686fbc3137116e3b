import { real } from '../typed.ts';
import { airAt, seriesEnd, type AirSeries } from '../air/series.ts';
import type { Minute, Span } from '../time/span.ts';
import { oncePer } from '../once-per.ts';
import type { RateLaw } from './rate-law.ts';

/** Hours of drying are summed up by the day, and only for the days that somebody asks about. */
export const DAY = 1440;
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
  /** The air's record: what its days begin with is known as soon as the days before are summed up. */
  readonly record: Span;
  /** The last minute at which a mark may be reached. */
  readonly last: Minute;
}

/** A dose by its days, numbered from the beginning of the air, which the same air elsewhere can share. */
export interface DailyDose extends Dose {
  day(k: number): DaySum;
  /** Hours of that day. */
  total(k: number): number;
}

/** The dose of air that is the same but from the sample of number `first` up to that of number `end`. */
interface Usual {
  readonly dose: DailyDose;
  readonly first: number;
  readonly end: number;
}

/** One day, summed up no further than somebody has asked. */
interface DaySum {
  /** Hours from the start of the day to a minute so much after its node of number `node`. */
  hoursAt(node: number, minutes: number): number;
  total(): number;
}

interface Known {
  /** What to go by on days on which the air is that of another. */
  readonly usual?: Usual | undefined;
  /** Hours of each day, NaN where they are not known yet: those are filled in. */
  readonly totals?: Float64Array;
}

function daysOf(air: AirSeries): number {
  return Math.ceil((seriesEnd(air) - air.from) / DAY);
}

const unknownTotals = (air: AirSeries): Float64Array => new Float64Array(daysOf(air)).fill(NaN);

/** Builds the integral bit by bit, on demand. `nodeMinutes` is for the test that the step does not matter. */
export function integrate(
  air: AirSeries,
  law: RateLaw,
  nodeMinutes = NODE_MINUTES,
  { usual, totals = unknownTotals(air) }: Known = {},
): DailyDose {
  const { from, tempC, rhPercent } = air;
  const length = seriesEnd(air) - from;
  const count = Math.ceil(length / nodeMinutes);
  const perDay = Math.round(DAY / nodeMinutes);
  const dayCount = daysOf(air);
  const days: (DaySum | undefined)[] = [];

  const rateAt = (minutes: number): number => {
    const then = airAt(air, from + Math.min(length, minutes));
    return law.rate(then.tempC, then.rhPercent);
  };
  /** Minutes from a node to the next. */
  const stepAt = (node: number): number => Math.min(nodeMinutes, length - node * nodeMinutes);
  const nodesToSample = air.stepMinutes / nodeMinutes;
  const smoothNodes = Number.isInteger(nodesToSample) && nodesToSample <= MOST_SMOOTH_NODES ? nodesToSample : 0;
  const samplesADay = DAY / air.stepMinutes;
  /** Past its record the air of a room repeats day by day, and so does all that follows from it. */
  const isAsTheDayBefore = (k: number): boolean => {
    if (k === 0 || !Number.isInteger(samplesADay) || (k + 1) * perDay > count) return false;
    for (let sample = k * samplesADay; sample <= (k + 1) * samplesADay; sample += 1) {
      if (real(tempC, sample) !== real(tempC, sample - samplesADay)) return false;
      if (real(rhPercent, sample) !== real(rhPercent, sample - samplesADay)) return false;
    }
    return true;
  };
  const usualOn = (k: number): DailyDose | undefined =>
    usual !== undefined && ((k + 1) * samplesADay < usual.first || k * samplesADay >= usual.end)
      ? usual.dose
      : undefined;
  /** Nodes of one stretch between two samples of the air, where the rate goes so smoothly that three looks tell all. */
  const fillSmoothly = (rates: Float64Array, own: number, sample: number): boolean => {
    const farC = real(tempC, sample + 1);
    const farRh = real(rhPercent, sample + 1);
    const near = real(rates, own);
    const middle = law.rate((real(tempC, sample) + farC) / 2, (real(rhPercent, sample) + farRh) / 2);
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
  /** Sums minute by minute, so that the sum never goes down, whatever rounding does. */
  const summedUp = (k: number): DaySum => {
    const start = k * perDay;
    const nodes = Math.min(count - start, perDay);
    // At each node of the day, the last one being the first of the next day: known so far.
    const rates = new Float64Array(nodes + 1);
    const hours = new Float64Array(nodes + 1);
    let rated = 0;
    let summed = 0;
    rates[0] = rateAt(start * nodeMinutes);
    const rateUpTo = (node: number) => {
      while (rated < node) {
        const fits = smoothNodes > 2 && (start + rated) % smoothNodes === 0 && rated + smoothNodes <= nodes;
        if (fits && fillSmoothly(rates, rated, (start + rated) / smoothNodes)) rated += smoothNodes;
        else {
          rated += 1;
          rates[rated] = rateAt((start + rated) * nodeMinutes);
        }
      }
    };
    /** Goes on from what is summed up to a node. */
    const onFrom = (node: number, minutes: number, sum: number): number => {
      const rate = real(rates, node);
      const slope = (real(rates, node + 1) - rate) / stepAt(start + node);
      let total = sum;
      for (let m = 0.5; m < minutes; m += 1) total += (rate + slope * m) / 60;
      return total;
    };
    const sumUpTo = (node: number): number => {
      rateUpTo(Math.min(node + 1, nodes));
      for (; summed < node; summed += 1)
        hours[summed + 1] = onFrom(summed, stepAt(start + summed), real(hours, summed));
      return real(hours, node);
    };
    return {
      hoursAt: (node, minutes) => onFrom(node, minutes, sumUpTo(node)),
      total: () => sumUpTo(nodes),
    };
  };
  const day = (k: number): DaySum =>
    (days[k] ??= usualOn(k)?.day(k) ?? (isAsTheDayBefore(k) ? day(k - 1) : summedUp(k)));
  const total = (k: number): number => {
    const known = real(totals, k);
    if (!Number.isNaN(known)) return known;
    return (totals[k] = usualOn(k)?.total(k) ?? (isAsTheDayBefore(k) ? total(k - 1) : day(k).total()));
  };

  const inGrains = (value: number): number => Math.round(value / GRAIN_HOURS) * GRAIN_HOURS;
  /** Hours up to the start of each day, known from that of day `first` to that of day `last`. */
  const before = new Float64Array(dayCount + 1);
  let [first, last] = [-1, -1];
  const upToDay = (k: number): number => {
    if (first < 0) first = last = Math.min(k, dayCount - 1);
    for (; first > k; first -= 1) before[first - 1] = real(before, first) - inGrains(total(first - 1));
    for (; last < k; last += 1) before[last + 1] = real(before, last) + inGrains(total(last));
    return real(before, k);
  };
  const within = (minutes: number): number => {
    const node = Math.floor(minutes / nodeMinutes);
    if (minutes % DAY === 0) return upToDay(minutes / DAY);
    if (node === count) return upToDay(dayCount);
    const k = Math.floor(node / perDay);
    const sum = day(k).hoursAt(node - k * perDay, minutes - node * nodeMinutes);
    return upToDay(k) + inGrains(sum);
  };

  const aDay = Math.min(DAY, length);
  let speedBefore: number | undefined;
  let speedAfter: number | undefined;
  return {
    record: { start: from, end: from + length },
    last: from + length + LAST_MINUTES_AFTER,
    day,
    total,
    hoursAt(minute) {
      const k = minute - from;
      if (k >= 0 && k <= length) return within(k);
      if (k < 0) return within(0) + inGrains(k * (speedBefore ??= (within(aDay) - within(0)) / aDay));
      const whole = within(length);
      return whole + inGrains((k - length) * (speedAfter ??= (whole - within(length - aDay)) / aDay));
    },
  };
}

/** Hours of the days that were summed up, by law. */
export type DayTotals = Map<string, Float64Array>;

const totalsIn = new WeakMap<AirSeries, DayTotals>();

/** What has been summed up in this air, and what will be: a later run of the program need not do it again. */
export function dayTotals(air: AirSeries): DayTotals {
  const totals = totalsIn.get(air) ?? new Map<string, Float64Array>();
  totalsIn.set(air, totals);
  return totals;
}

/** Takes over what was summed up before, in the same air. */
export function recallDayTotals(air: AirSeries, totals: DayTotals): void {
  totalsIn.set(air, totals);
}

/** One integral for each law in each room's air, made when first asked for. */
export const doseOf: (air: AirSeries, law: RateLaw) => DailyDose = oncePer<AirSeries, RateLaw, DailyDose>(
  (air, law) => {
    const usual = air.but && { ...air.but, dose: doseOf(air.but.usual, law) };
    const totals = dayTotals(air).get(law.key) ?? unknownTotals(air);
    dayTotals(air).set(law.key, totals);
    return integrate(air, law, NODE_MINUTES, { usual, totals });
  },
  (law) => law.key,
);

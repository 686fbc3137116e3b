import type { AirSource } from '../model/shop.ts';
import type { Minute } from '../time/span.ts';
import { dailyAir, monthlyAir } from './curves.ts';
import { fillRecord } from './fill-record.ts';
import { heatedAir } from './heated.ts';
import { rhAfterHeating } from './psychrometrics.ts';
import { type Air, airAt, sampleAir, seriesEnd, type AirSeries } from './series.ts';

/** Minutes between the samples of a room's air. */
export const AIR_STEP_MINUTES = 15;

/**
 * The air of a room from `from` to `to`, by `source`; curves are read on the wall clock of `timeZone`. What a record
 * lacks is filled by the rule in fill-record.ts and told in `notes`. Samples lie on whole quarters of an hour, so that
 * the same hour has the same air whenever it is asked for.
 *
 * Throws a RangeError for a record or curve without a single sample, which the reader of the files refuses.
 */
export function roomAir(source: AirSource, timeZone: string, from: Minute, to: Minute): AirSeries {
  return onGrid(source, timeZone, AIR_STEP_MINUTES * Math.floor(from / AIR_STEP_MINUTES), to);
}

function onGrid(source: AirSource, timeZone: string, from: Minute, to: Minute): AirSeries {
  switch (source.kind) {
    case 'constant':
      return sampleAir(from, to, Math.max(1, to - from), () => source);
    case 'daily':
      return sampleAir(from, to, AIR_STEP_MINUTES, dailyAir(source.curve, timeZone));
    case 'monthly':
      return sampleAir(from, to, AIR_STEP_MINUTES, monthlyAir(source.months, timeZone));
    case 'series': {
      const { airOf, notes } = fillRecord(source.samples, from, to);
      return sampleAir(from, to, AIR_STEP_MINUTES, airOf, notes);
    }
    case 'for-a-while':
      return airForAWhile(source, onGrid(source.of, timeZone, from, to));
    case 'heated':
      return heatedAir(source, (start, end) => roomAir(source.outdoors, timeZone, start, end), timeZone, from, to);
  }
}

export type ForAWhile = Extract<AirSource, { readonly kind: 'for-a-while' }>;

/** The air of a room that is warmer or drier than usual for a while. */
export function airForAWhile(source: ForAWhile, usual: AirSeries): AirSeries {
  const { from, notes } = usual;
  const { start, end } = source.during;
  const isOnGrid = usual.stepMinutes === AIR_STEP_MINUTES;
  const series = isOnGrid
    ? { ...usual, tempC: usual.tempC.slice(), rhPercent: usual.rhPercent.slice() }
    : sampleAir(from, seriesEnd(usual), AIR_STEP_MINUTES, (minute) => airAt(usual, minute), notes);
  const { tempC, rhPercent } = series;
  const first = Math.max(0, Math.ceil((start - from) / AIR_STEP_MINUTES));
  const last = Math.min(tempC.length, Math.max(first, Math.ceil((end - from) / AIR_STEP_MINUTES)));
  for (let i = first; i < last; i += 1) {
    const air = otherwise(source, airAt(usual, from + i * AIR_STEP_MINUTES));
    tempC[i] = air.tempC;
    rhPercent[i] = air.rhPercent;
  }
  return isOnGrid ? { ...series, but: { usual, first, end: last } } : series;
}

function otherwise({ byK = 0, toRhPercent = 100 }: ForAWhile, air: Air): Air {
  const tempC = air.tempC + byK;
  const rhPercent = byK === 0 ? air.rhPercent : rhAfterHeating(air.tempC, air.rhPercent, tempC);
  return { tempC, rhPercent: Math.min(100, toRhPercent, rhPercent) };
}

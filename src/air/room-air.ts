import type { AirSource } from '../model/shop.ts';
import type { Minute, Span } from '../time/span.ts';
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
  if (usual.stepMinutes === AIR_STEP_MINUTES)
    return withSamples(usual, source.during, (air, minute) => forAWhile(source, air, minute));
  const air = (minute: Minute) => forAWhile(source, airAt(usual, minute), minute);
  return sampleAir(usual.from, seriesEnd(usual), AIR_STEP_MINUTES, air, usual.notes);
}

/** The same samples, but those in `during`. */
function withSamples(usual: AirSeries, { start, end }: Span, change: (air: Air, minute: Minute) => Air): AirSeries {
  const { from, stepMinutes } = usual;
  const [tempC, rhPercent] = [usual.tempC.slice(), usual.rhPercent.slice()];
  const first = Math.max(0, Math.ceil((start - from) / stepMinutes));
  for (let i = first; i < tempC.length && from + i * stepMinutes < end; i += 1) {
    const minute = from + i * stepMinutes;
    const air = change(airAt(usual, minute), minute);
    tempC[i] = air.tempC;
    rhPercent[i] = air.rhPercent;
  }
  return { ...usual, tempC, rhPercent };
}

function forAWhile({ during, byK = 0, toRhPercent = 100 }: ForAWhile, air: Air, minute: Minute): Air {
  if (minute < during.start || minute >= during.end) return air;
  const tempC = air.tempC + byK;
  const rhPercent = byK === 0 ? air.rhPercent : rhAfterHeating(air.tempC, air.rhPercent, tempC);
  return { tempC, rhPercent: Math.min(100, toRhPercent, rhPercent) };
}

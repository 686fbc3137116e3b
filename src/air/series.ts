import type { Minute } from '../time/span.ts';
import { real } from '../typed.ts';

/**
 * The air of one room through time: samples every `stepMinutes` from `from`, straight lines between them. Before the
 * first and after the last sample the nearest one holds.
 */
export interface AirSeries {
  readonly from: Minute;
  readonly stepMinutes: number;
  readonly tempC: Float64Array;
  readonly rhPercent: Float64Array;
  /** What was filled in, and from where to where: never silent. */
  readonly notes: readonly AirNote[];
  /** Air that this is sample by sample, but from the one of number `first` up to that of number `end`. */
  readonly but?: { readonly usual: AirSeries; readonly first: number; readonly end: number };
}

export interface AirNote {
  readonly code: 'gap-filled' | 'before-record' | 'after-record';
  readonly from: Minute;
  readonly to: Minute;
  readonly text: string;
}

/** Air at one instant. */
export interface Air {
  readonly tempC: number;
  readonly rhPercent: number;
}

/** The minute of the last sample. */
export function seriesEnd(series: AirSeries): Minute {
  return series.from + (series.tempC.length - 1) * series.stepMinutes;
}

/** What `values`, which `series` has at its samples, come to at `minute`: straight from one sample to the next. */
function valueAt({ from, stepMinutes }: AirSeries, values: Float64Array, minute: Minute): number {
  const last = values.length - 1;
  const passed = Math.min(last * stepMinutes, Math.max(0, minute - from));
  const index = Math.floor(passed / stepMinutes);
  const share = (passed - index * stepMinutes) / stepMinutes;
  const before = real(values, index);
  return before + (real(values, Math.min(last, index + 1)) - before) * share;
}

/** How warm the air of `series` is at `minute`: all that many need of it, and half the work. */
export function tempAt(series: AirSeries, minute: Minute): number {
  return valueAt(series, series.tempC, minute);
}

/** The air of `series` at `minute`. */
export function airAt(series: AirSeries, minute: Minute): Air {
  return { tempC: tempAt(series, minute), rhPercent: valueAt(series, series.rhPercent, minute) };
}

/** A series that asks `airOf` at each sample. Covers `from` to `to`, with at least two samples. */
export function sampleAir(
  from: Minute,
  to: Minute,
  stepMinutes: number,
  airOf: (minute: Minute) => Air,
  notes: readonly AirNote[] = [],
): AirSeries {
  const count = Math.max(2, Math.ceil((to - from) / stepMinutes) + 1);
  const tempC = new Float64Array(count);
  const rhPercent = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const air = airOf(from + i * stepMinutes);
    tempC[i] = air.tempC;
    rhPercent[i] = air.rhPercent;
  }
  return { from, stepMinutes, tempC, rhPercent, notes };
}

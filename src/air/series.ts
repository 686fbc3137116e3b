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

/** How warm the air of `series` is at `minute`: just as `airAt` says, for who asks minute by minute. */
export function tempAt({ from, stepMinutes, tempC }: AirSeries, minute: Minute): number {
  const last = tempC.length - 1;
  const passed = Math.min(last * stepMinutes, Math.max(0, minute - from));
  const index = Math.floor(passed / stepMinutes);
  const share = (passed - index * stepMinutes) / stepMinutes;
  const before = real(tempC, index);
  return before + (real(tempC, Math.min(last, index + 1)) - before) * share;
}

/** The air of `series` at `minute`. */
export function airAt(series: AirSeries, minute: Minute): Air {
  const last = series.tempC.length - 1;
  const passed = Math.min(last * series.stepMinutes, Math.max(0, minute - series.from));
  const index = Math.floor(passed / series.stepMinutes);
  const next = Math.min(last, index + 1);
  const share = (passed - index * series.stepMinutes) / series.stepMinutes;
  const tempC = real(series.tempC, index);
  const rhPercent = real(series.rhPercent, index);
  return {
    tempC: tempC + (real(series.tempC, next) - tempC) * share,
    rhPercent: rhPercent + (real(series.rhPercent, next) - rhPercent) * share,
  };
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

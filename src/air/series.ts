import type { Minute } from '../time/span.ts';

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
}

export interface AirNote {
  readonly code: 'gap-filled' | 'before-record' | 'after-record';
  readonly from: Minute;
  readonly to: Minute;
  readonly text: string;
}

import type { AirSample } from '../model/shop.ts';
import type { Minute } from '../time/span.ts';
import { at } from '../at.ts';
import type { Air, AirNote } from './series.ts';
import { worded } from '../words/worded.ts';

const DAY = 1440;

/** A hole in a record up to this long is bridged with a straight line. */
export const LONGEST_BRIDGE_MINUTES = 180;

/** Index of the last sample at or before `minute`; -1 if there is none. */
function indexBefore(samples: readonly AirSample[], minute: Minute): number {
  let low = -1;
  let high = samples.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (at(samples, middle).minute <= minute) low = middle;
    else high = middle - 1;
  }
  return low;
}

function onLine(a: AirSample, b: AirSample, minute: Minute): Air {
  const share = b.minute === a.minute ? 0 : (minute - a.minute) / (b.minute - a.minute);
  return {
    tempC: a.tempC + (b.tempC - a.tempC) * share,
    rhPercent: a.rhPercent + (b.rhPercent - a.rhPercent) * share,
  };
}

/**
 * Air at any minute from a record that has holes and ends.
 * - Between two samples, and over a hole of up to three hours: a straight line.
 * - In a longer hole: the same hour of the nearest day before that is on record, else of the nearest day after.
 * - After the record its last 24 hours repeat; before it, its first 24 hours. A record shorter than a day holds its
 *   nearest value instead.
 */
export function fillRecord(
  record: readonly AirSample[],
  from: Minute,
  to: Minute,
): { airOf: (minute: Minute) => Air; notes: readonly AirNote[] } {
  const samples = [...record].sort((a, b) => a.minute - b.minute);
  const first = at(samples, 0);
  const last = at(samples, samples.length - 1);
  const repeats = last.minute - first.minute >= DAY;

  const known = (minute: Minute): Air | undefined => {
    const index = indexBefore(samples, minute);
    const a = samples[index];
    if (a === undefined) return undefined;
    if (a.minute === minute) return a;
    const b = samples[index + 1];
    return b !== undefined && b.minute - a.minute <= LONGEST_BRIDGE_MINUTES ? onLine(a, b, minute) : undefined;
  };

  const inHole = (minute: Minute): Air => {
    for (let m = minute - DAY; m >= first.minute; m -= DAY) {
      const air = known(m);
      if (air !== undefined) return air;
    }
    for (let m = minute + DAY; m <= last.minute; m += DAY) {
      const air = known(m);
      if (air !== undefined) return air;
    }
    const index = indexBefore(samples, minute);
    return onLine(at(samples, index), at(samples, index + 1), minute);
  };

  const airOf = (minute: Minute): Air => {
    if (minute > last.minute) {
      if (!repeats) return last;
      return airOf(minute - Math.ceil((minute - last.minute) / DAY) * DAY);
    }
    if (minute < first.minute) {
      if (!repeats) return first;
      return airOf(minute + Math.ceil((first.minute - minute) / DAY) * DAY);
    }
    return known(minute) ?? inHole(minute);
  };

  return { airOf, notes: notesOn(samples, from, to, repeats) };
}

function notesOn(samples: readonly AirSample[], from: Minute, to: Minute, repeats: boolean): AirNote[] {
  const first = at(samples, 0).minute;
  const last = at(samples, samples.length - 1).minute;
  const notes: AirNote[] = [];
  if (from < first) {
    const text = repeats
      ? worded`no record yet: its first 24 hours stand in`
      : worded`no record yet: its first value stands in`;
    notes.push({ code: 'before-record', from, to: Math.min(to, first), text });
  }
  for (const [i, sample] of samples.entries()) {
    const next = samples[i + 1];
    if (next === undefined || next.minute - sample.minute <= LONGEST_BRIDGE_MINUTES) continue;
    if (next.minute <= from || sample.minute >= to) continue;
    const text = worded`hole in the record: the same hours of the nearest day on record stand in`;
    notes.push({ code: 'gap-filled', from: Math.max(from, sample.minute), to: Math.min(to, next.minute), text });
  }
  if (to > last) {
    const text = repeats
      ? worded`past the record: its last 24 hours repeat`
      : worded`past the record: its last value stands in`;
    notes.push({ code: 'after-record', from: Math.max(from, last), to, text });
  }
  return notes;
}

import type { AirSource } from '../model/shop.ts';
import type { Minute } from '../time/span.ts';
import { at } from '../at.ts';
import { rhFromVapour, vapourPressurePa } from './psychrometrics.ts';
import { airAt, tempAt, sampleAir, type Air, type AirSeries } from './series.ts';
import { clockReader } from './wall-clock.ts';
import { worded } from '../words/worded.ts';

const STEP_MINUTES = 15;
/** Lags after which a room has forgotten how warm it began. */
const FORGOTTEN = 6;

type Heated = Extract<AirSource, { kind: 'heated' }>;

/** The set-point in force on the wall clock; before the day's first one, the day before's last. */
function setPointReader(points: Heated['setPoints'], zone: string): (minute: Minute) => number {
  const sorted = [...points].sort((a, b) => a.clock - b.clock);
  const read = clockReader(zone);
  return (minute) => {
    const { clock } = read(minute);
    const inForce = sorted.findLast((p) => p.clock <= clock) ?? at(sorted, sorted.length - 1);
    return inForce.tempC;
  };
}

/**
 * Outdoor air brought in and heated. The heater holds the set-point or, where outdoors is warmer, follows outdoors; the
 * room closes 63 % of the way to a new target in `lagHours`. The water in the air is outdoors' own (constant humidity
 * ratio), less what a drier takes out above its set RH. The room is taken to have kept its set-points before `from`.
 */
export function heatedAir(
  source: Heated,
  outdoorsBetween: (from: Minute, to: Minute) => AirSeries,
  zone: string,
  from: Minute,
  to: Minute,
): AirSeries {
  const lagMinutes = source.lagHours * 60;
  const start = from - STEP_MINUTES * Math.ceil((FORGOTTEN * lagMinutes) / STEP_MINUTES);
  const outdoors = outdoorsBetween(start, to);
  const setPointAt = setPointReader(source.setPoints, zone);
  const targetAt = (minute: Minute): number => Math.max(setPointAt(minute), tempAt(outdoors, minute));
  const kept = lagMinutes > 0 ? Math.exp(-STEP_MINUTES / lagMinutes) : 0;
  const cap = source.driedToRhPercent ?? 100;

  let roomC = targetAt(start);
  const series = sampleAir(start, to, STEP_MINUTES, (minute): Air => {
    if (minute > start) {
      const targetC = lagMinutes > 0 ? targetAt(minute - STEP_MINUTES) : targetAt(minute);
      roomC = targetC + (roomC - targetC) * kept;
    }
    const outside = airAt(outdoors, minute);
    const rh = rhFromVapour(roomC, vapourPressurePa(outside.tempC, outside.rhPercent));
    return { tempC: roomC, rhPercent: Math.min(cap, rh) };
  });
  const skip = (from - start) / STEP_MINUTES;
  const notes = outdoors.notes
    .filter((n) => n.to > from)
    .map((n) => ({ ...n, from: Math.max(from, n.from), text: worded`outdoors: ${n.text}` }));
  return { ...series, from, tempC: series.tempC.subarray(skip), rhPercent: series.rhPercent.subarray(skip), notes };
}

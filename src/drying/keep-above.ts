import { tempAt, type AirSeries, seriesEnd } from '../air/series.ts';
import { real } from '../typed.ts';
import type { Limits } from '../model/material.ts';
import { unite, type Minute, type Span, type Spans } from '../time/span.ts';
import { ALWAYS, NEVER } from '../time/time-map.ts';
import { oncePer } from '../once-per.ts';
import { goOn, type OpenSpan } from './open-span.ts';

type KeepAbove = NonNullable<Limits['keepAbove']>;

/** The minutes at which the air is at least `leastC`: straight lines between samples, so each crossing is worked out. */
function workedOut({ from, stepMinutes, tempC }: AirSeries, leastC: number): Spans {
  const last = tempC.length - 1;
  const end = from + last * stepMinutes;
  const spans: OpenSpan[] = [];
  if (real(tempC, 0) >= leastC) goOn(spans, ALWAYS, from);
  for (let i = 0; i < last; i += 1) {
    const a = real(tempC, i);
    const b = real(tempC, i + 1);
    const start = from + i * stepMinutes;
    if (a >= leastC && b >= leastC) goOn(spans, start, start + stepMinutes);
    else if (a >= leastC || b >= leastC) {
      const crossing = ((leastC - a) / (b - a)) * stepMinutes;
      if (a >= leastC) goOn(spans, start, start + Math.floor(crossing) + 1);
      else goOn(spans, start + Math.ceil(crossing), start + stepMinutes);
    }
  }
  if (real(tempC, last) >= leastC) goOn(spans, end, NEVER);
  return unite(spans);
}

const warmSpans = oncePer(workedOut);

/** Starts of a coat from which the air is never colder than asked for until the hours after its end are over. */
export function warmEnough({ tempC, hours }: KeepAbove, air: AirSeries, runMinutes: number): Spans {
  const minutes = runMinutes + Math.ceil(hours * 60);
  return warmSpans(air, tempC).flatMap((s): Span[] =>
    s.end - minutes >= s.start ? [{ start: s.start, end: s.end - minutes + 1 }] : [],
  );
}

/** The coldest minute that the air has from `minute` until the hours that `keepAbove` asks for are over, °C. */
export function coldestAhead({ hours }: KeepAbove, air: AirSeries, minute: Minute): number {
  const { from, stepMinutes } = air;
  const last = minute + Math.ceil(hours * 60);
  const next = Math.max(minute, from + stepMinutes * Math.ceil((minute - from) / stepMinutes), from);
  // Straight lines between samples: coldest at either end, or at a sample.
  let coldest = Math.min(tempAt(air, minute), tempAt(air, last));
  for (let sample = next; sample <= Math.min(last, seriesEnd(air)); sample += stepMinutes)
    coldest = Math.min(coldest, tempAt(air, sample));
  return coldest;
}

import type { AirSeries } from '../air/series.ts';
import { oncePer } from '../once-per.ts';
import type { Minute, Span } from '../time/span.ts';
import { ALWAYS, NEVER } from '../time/time-map.ts';

/** After so long, neither wood nor surface know any more what the air was before. */
const FORGOTTEN_MINUTES = 2 * 1440;

function sameValues(a: AirSeries, b: AirSeries, i: number): boolean {
  return a.tempC[i] === b.tempC[i] && a.rhPercent[i] === b.rhPercent[i];
}

/** From the last sample before the first that differs to the first after the last; undefined where none differs. */
function spanApart(a: AirSeries, b: AirSeries): Span | undefined {
  const count = a.tempC.length;
  if (a.from !== b.from || a.stepMinutes !== b.stepMinutes || count !== b.tempC.length)
    return { start: ALWAYS, end: NEVER };
  let [first, last] = [0, count - 1];
  while (first < count && sameValues(a, b, first)) first += 1;
  if (first === count) return undefined;
  while (sameValues(a, b, last)) last -= 1;
  const minuteOf = (i: number): Minute => a.from + i * a.stepMinutes;
  // What the first and the last sample say goes on for ever.
  return { start: first === 0 ? ALWAYS : minuteOf(first - 1), end: last === count - 1 ? NEVER : minuteOf(last + 1) };
}

const apart = oncePer(spanApart);

/** Up to when what lies in it from `start` on meets the same air in both: never, if not even the air before `start` is forgotten. */
export function sameUntil(a: AirSeries | undefined, b: AirSeries | undefined, start: Minute): Minute {
  if (a === b) return NEVER;
  if (a === undefined || b === undefined) return ALWAYS;
  const differs = apart(a, b);
  if (differs === undefined || start >= differs.end + FORGOTTEN_MINUTES) return NEVER;
  return start <= differs.start ? differs.start : ALWAYS;
}

/** Is the air the same for all that lies in it from `start` to `end`, or did it differ so long before that nothing knows of it? */
export function airAlike(a: AirSeries | undefined, b: AirSeries | undefined, { start, end }: Span): boolean {
  return end <= sameUntil(a, b, start);
}

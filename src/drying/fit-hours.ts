import { at } from '../at.ts';
import { airAt, type AirSeries, seriesEnd } from '../air/series.ts';
import type { Film, Material } from '../model/material.ts';
import { intersect, unite, type Minute, type Span, type Spans } from '../time/span.ts';
import { ALWAYS, NEVER, type TimeMap } from '../time/time-map.ts';
import { breaches } from './air-limits.ts';
import { dryMap } from './dry-marks.ts';
import { potLifeMap } from './pot-life.ts';

/** Temperature of the work's surface; where it is not known it is taken to be that of the air. */
export type SurfaceTemp = (minute: Minute) => number;

/** The air is looked at this often; where it turns from fit to unfit in between, the minute is searched. */
const LOOK_MINUTES = 5;

/** The minutes of `from` to `to` at which air and surface are inside the limits of `material`. */
export function fitHours(material: Material, air: AirSeries, from: Minute, to: Minute, surface?: SurfaceTemp): Spans {
  if (surface === undefined) return intersect(fitInAir(material, air), [{ start: from, end: to }]);
  return spansWhere(from, to, (minute) => breaches(material, airAt(air, minute), surface(minute)).length === 0);
}

/** The fit spans of a room's air, by what decides them: many materials share their limits. */
const fitSpans = new WeakMap<AirSeries, Map<string, Spans>>();

function fitInAir(material: Material, air: AirSeries): Spans {
  let ofAir = fitSpans.get(air);
  if (ofAir === undefined) fitSpans.set(air, (ofAir = new Map<string, Spans>()));
  const { limits, minFilmTempC, mechanism } = material;
  const key = JSON.stringify([limits && { ...limits, source: '' }, minFilmTempC, mechanism === 'water']);
  let spans = ofAir.get(key);
  if (spans === undefined) {
    const fitAt = (minute: Minute): boolean => breaches(material, airAt(air, minute)).length === 0;
    const [first, last] = [air.from, seriesEnd(air)];
    spans = unite([
      ...(fitAt(first) ? [{ start: ALWAYS, end: first }] : []),
      ...spansWhere(first, last, fitAt),
      ...(fitAt(last) ? [{ start: last, end: NEVER }] : []),
    ]);
    ofAir.set(key, spans);
  }
  return spans;
}

/**
 * Minutes at which a coat that takes `runMinutes` to lay down may be started: air and surface stay inside the limits
 * from the start until the film is dust-free by its slow end, and a two-part mix outlives the run.
 */
export function applicationStarts(
  material: Material,
  film: Film,
  air: AirSeries,
  runMinutes: number,
  from: Minute,
  to: Minute,
  surface?: SurfaceTemp,
): Spans {
  const settled = settledMap(material, film, air);
  const fit = fitHours(material, air, from, to + LONGEST_LOOK, surface);
  const starts = fit.map((s) => ({ start: s.start, end: Math.min(to, settled.latest(s.end) - runMinutes + 1) }));
  const potLife = potLifeMap(material, air);
  if (potLife === undefined) return unite(starts);
  return intersect(
    unite(starts),
    spansWhere(from, to, (minute) => potLife.at(minute) >= minute + runMinutes),
  );
}

/** No coat is laid down whose dust-free mark is further off than this. */
const LONGEST_LOOK = 14 * 1440;

/** From the end of application to when the film no longer minds the air: dust-free, or else its first mark. */
export function settledMap(material: Material, film: Film, air: AirSeries): TimeMap {
  const mark = material.marks['dust-free'] === undefined ? 'touch' : 'dust-free';
  return dryMap(material, mark, 'late', film, air);
}

/** The minutes of `from` to `to` at which `holds`, looked at on a fixed grid and searched to the minute between. */
function spansWhere(from: Minute, to: Minute, holds: (minute: Minute) => boolean): Spans {
  if (to <= from) return [];
  let now = holds(from);
  const edges: Minute[] = now ? [from] : [];
  for (let seen = from; seen < to;) {
    const next = Math.min(to, LOOK_MINUTES * (Math.floor(seen / LOOK_MINUTES) + 1));
    if (holds(next) !== now) {
      edges.push(turn(seen, next, (minute) => holds(minute) === now));
      now = !now;
    }
    seen = next;
  }
  if (now) edges.push(to);
  const spans: Span[] = [];
  for (let i = 0; i < edges.length; i += 2) spans.push({ start: at(edges, i), end: at(edges, i + 1) });
  return unite(spans);
}

/** First minute after `before`, up to `after`, at which things are no longer as they were. */
function turn(before: Minute, after: Minute, asBefore: (minute: Minute) => boolean): Minute {
  let low = before;
  let high = after;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (asBefore(middle)) low = middle;
    else high = middle;
  }
  return high;
}

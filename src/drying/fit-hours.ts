import { airAt, type AirSeries, seriesEnd } from '../air/series.ts';
import type { Film, Material } from '../model/material.ts';
import { intersect, unite, type Minute, type Span, type Spans } from '../time/span.ts';
import { ALWAYS, NEVER, type TimeMap } from '../time/time-map.ts';
import { type Between, brokenIn, brokenThroughout } from './air-limits.ts';
import { stretchBoxes } from './air-stretches.ts';
import { dryMap } from './dry-marks.ts';
import { warmEnough } from './keep-above.ts';
import { oncePer } from '../once-per.ts';
import { goOn, type OpenSpan } from './open-span.ts';
import { potLifeMap } from './pot-life.ts';
import { surfaceOf } from './surface.ts';

/**
 * The minutes of `from` to `to` at which air and surface are inside the limits of `material`, exact to the minute. The
 * surface is that of work of `thicknessMm` which stays in the room; with no thickness it is as warm as the air.
 */
export function fitHours(material: Material, air: AirSeries, from: Minute, to: Minute, thicknessMm = 0): Spans {
  const coat = { material, thicknessMm };
  const asked = { start: from, end: to };
  return intersect(to - from <= SHORT_LOOK ? workedOut(air, coat, asked) : fitInAir(air, coat)(asked), [asked]);
}

/** Who asks for no more than this asks for a day to be shown, not for all hours in which something may be laid. */
const SHORT_LOOK = 2 * 1440;

/** All of a material that air can be unfit by, as a text: what shares it is unfit in the same air. */
export function limitsKey({ limits, minFilmTempC, mechanism }: Material): string {
  return JSON.stringify([limits && { ...limits, source: '' }, minFilmTempC, mechanism === 'water']);
}

/** What is to be laid, and on what. */
interface Coat {
  readonly material: Material;
  readonly thicknessMm: number;
}

/** The fit spans of a room's air, as far as anybody asked, by what decides them: many materials share their limits. */
const fitInAir = oncePer(
  (air: AirSeries, coat: Coat) => grown((asked) => workedOut(air, coat, asked)),
  ({ material, thicknessMm }) => `${limitsKey(material)} ${thicknessMm}`,
);

/** Remembers what was worked out, and works out the rest when more is asked for. */
function grown(workOut: (asked: Span) => Spans): (asked: Span) => Spans {
  let known: Span | undefined;
  let fit: Spans = [];
  return (asked) => {
    const { start, end } = known ?? { start: asked.end, end: asked.end };
    const missing = [
      { start: asked.start, end: start },
      { start: end, end: asked.end },
    ].filter((span) => span.start < span.end);
    if (missing.length === 0) return fit;
    known = { start: Math.min(asked.start, start), end: Math.max(asked.end, end) };
    fit = unite([...fit, ...missing.flatMap(workOut)]);
    return fit;
  };
}

/** The fit spans of a room's air as far as they are asked for; what is said beyond is true, but not all. */
function workedOut(air: AirSeries, { material, thicknessMm }: Coat, asked: Span): Spans {
  const surface = surfaceOf(air, thicknessMm);
  const fitAt = (minute: Minute): boolean => {
    const { tempC, rhPercent } = airAt(air, minute);
    const surfaceC = surface(minute);
    return !brokenIn(material, { temp: only(tempC), rh: only(rhPercent), surface: only(surfaceC) });
  };
  const [first, last] = [air.from, seriesEnd(air)];
  const fit: OpenSpan[] = asked.start < first && fitAt(first) ? [{ start: ALWAYS, end: first }] : [];
  const count = air.tempC.length - 1;
  const look = (length: number): ((k: number) => void) => {
    const boxes = stretchBoxes(air, thicknessMm, length);
    const closer = length > 1 ? look(1) : undefined;
    return (k) => {
      const from = k * length;
      const to = Math.min(count, from + length);
      const start = first + from * air.stepMinutes;
      const end = first + to * air.stepMinutes;
      const box = boxes(k);
      if (!brokenIn(material, box)) goOn(fit, start, end);
      else if (!brokenThroughout(material, box)) {
        if (closer === undefined) fit.push(...minutesWhere(start, end, fitAt));
        else for (let i = from; i < to; i += 1) closer(i);
      }
    };
  };
  const lookLong = look(LONG_STRETCH);
  const stretchMinutes = LONG_STRETCH * air.stepMinutes;
  const from = Math.max(0, Math.floor((asked.start - first) / stretchMinutes));
  const to = Math.min(count / LONG_STRETCH, (asked.end - first) / stretchMinutes);
  for (let k = from; k < to; k += 1) lookLong(k);
  if (asked.end <= last) return unite(fit);
  // Past its last sample the air stays; what lags has come near to it within a day, which is looked at by the minute.
  const settled = last + (thicknessMm > 0 ? SETTLES_MINUTES : 0);
  fit.push(...minutesWhere(last, settled, fitAt));
  if (fitAt(settled)) fit.push({ start: settled, end: NEVER });
  return unite(fit);
}

const SETTLES_MINUTES = 1440;

/** Samples looked at in one: most hours are fit for a material, or unfit, many at a time. */
const LONG_STRETCH = 12;

const only = (value: number): Between => ({ low: value, high: value });

/** Every single minute of `from` to `to` at which `holds`. */
function minutesWhere(from: Minute, to: Minute, holds: (minute: Minute) => boolean): OpenSpan[] {
  const spans: OpenSpan[] = [];
  for (let minute = from; minute < to; minute += 1) if (holds(minute)) goOn(spans, minute, minute + 1);
  return spans;
}

/**
 * Minutes at which a coat that takes `runMinutes` to lay down may be started: air and surface stay inside the limits
 * from the start until the film is dust-free by its slow end, the air stays as warm as the material asks for the hours
 * after, and a two-part mix outlives the run.
 */
export function applicationStarts(
  material: Material,
  film: Film,
  air: AirSeries,
  runMinutes: number,
  from: Minute,
  to: Minute,
  thicknessMm = 0,
): Spans {
  const settled = settledMap(material, film, air);
  // What is begun last is settled by then.
  const settledBy = Math.min(to + LONGEST_LOOK, settled.at(to + runMinutes) + 1);
  const fit = fitHours(material, air, from, settledBy, thicknessMm);
  const starts = unite(fit.map((s) => ({ start: s.start, end: Math.min(to, settled.latest(s.end) - runMinutes + 1) })));
  const keepAbove = material.limits?.keepAbove;
  const kept = keepAbove === undefined ? starts : intersect(starts, warmEnough(keepAbove, air, runMinutes));
  const potLife = potLifeMap(material, air);
  return potLife === undefined ? kept : kept.flatMap((span) => outlived(potLife, runMinutes, span));
}

/** No coat is laid down whose dust-free mark is further off than this. */
const LONGEST_LOOK = 14 * 1440;

/** From the end of application to when the film no longer minds the air: dust-free, or else its first mark. */
export function settledMap(material: Material, film: Film, air: AirSeries): TimeMap {
  const mark = material.marks['dust-free'] === undefined ? 'touch' : 'dust-free';
  return dryMap(material, mark, 'late', film, air);
}

const LOOK_MINUTES = 15;

/** Minutes of a span at which a mix lasts `runMinutes`. The map never goes down, so that its ends decide for most stretches. */
function outlived(potLife: TimeMap, runMinutes: number, { start: from, end: to }: Span): Spans {
  const spans: Span[] = [];
  for (let start = from; start < to; start += LOOK_MINUTES) {
    const end = Math.min(to, start + LOOK_MINUTES);
    if (potLife.at(start) >= end - 1 + runMinutes) spans.push({ start, end });
    else if (potLife.at(end) >= start + runMinutes)
      spans.push(...minutesWhere(start, end, (minute) => potLife.at(minute) >= minute + runMinutes));
  }
  return unite(spans);
}

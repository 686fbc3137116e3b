import { condensationPointC, saturationPressurePa, vapourPressurePa, vpdPa } from '../../air/psychrometrics.ts';
import { airAt, tempAt, type Air, type AirSeries } from '../../air/series.ts';
import { LEAST_VPD_PA } from '../../drying/laws/water.ts';
import type { Material } from '../../model/material.ts';
import type { Minute } from '../../time/span.ts';
import type { Breach } from '../breach.ts';
import { reached, type Fact, type LaidFilm } from '../fact.ts';
import type { Ground } from '../ground.ts';
import { broughtIn, type BroughtIn } from '../brought-in.ts';
import { nextSample, surfaceFrom, surfaceStanding } from '../surface.ts';

/** Straight lines between equal samples are not quite level in floating point. */
const SLACK = 1e-6;

function nearDew({ tempC, rhPercent }: Air, surfaceC: number, marginK: number): boolean {
  return saturationPressurePa(surfaceC - marginK) < vapourPressurePa(tempC, rhPercent) - SLACK;
}

function degrees(tempC: number): string {
  return `${tempC.toFixed(1)} °C`;
}

function humidity(rhPercent: number): string {
  return `${rhPercent.toFixed(1)} % humidity`;
}

/** What forbids the material in this air on this surface; undefined where nothing does. */
function unfit({ limits, minFilmTempC, mechanism }: Material, air: Air, surfaceC: number): string | undefined {
  const { tempC, rhPercent } = air;
  if (limits !== undefined) {
    if (tempC < limits.minTempC - SLACK) return `${degrees(tempC)} is below ${limits.minTempC} °C`;
    if (tempC > limits.maxTempC + SLACK) return `${degrees(tempC)} is above ${limits.maxTempC} °C`;
    if (rhPercent < limits.minRhPercent - SLACK) return `${humidity(rhPercent)} is below ${limits.minRhPercent} %`;
    if (rhPercent > limits.maxRhPercent + SLACK) return `${humidity(rhPercent)} is above ${limits.maxRhPercent} %`;
    if (surfaceC < limits.minTempC - SLACK) return `the surface at ${degrees(surfaceC)} is below ${limits.minTempC} °C`;
    if (surfaceC > limits.maxTempC + SLACK) return `the surface at ${degrees(surfaceC)} is above ${limits.maxTempC} °C`;
    if (nearDew(air, surfaceC, limits.dewMarginK)) {
      const clear = surfaceC - condensationPointC(tempC, rhPercent);
      return `the surface at ${degrees(surfaceC)} is only ${clear.toFixed(1)} K above the dew point, not ${limits.dewMarginK} K`;
    }
  }
  if (minFilmTempC !== undefined && surfaceC <= minFilmTempC - SLACK)
    return `the surface at ${degrees(surfaceC)} is below the film-forming temperature of ${minFilmTempC} °C`;
  if (mechanism === 'water' && vpdPa(tempC, rhPercent) < LEAST_VPD_PA - SLACK)
    return `at ${degrees(tempC)} and ${humidity(rhPercent)} water hardly leaves the film`;
  return undefined;
}

/** How warm, how damp and how warm the surface is at the least and at the most, over some minutes. */
interface Reach {
  readonly tempC: readonly [low: number, high: number];
  readonly rhPercent: readonly [low: number, high: number];
  readonly surfaceC: readonly [low: number, high: number];
}

/** More than all roundings come to; nearer to the dew point, or to air that takes no water, each minute is looked at. */
const CLEAR_PA = 1;

/** Does nothing forbid the material, whatever the air and the surface are inside of `reach`? Where that is not sure, no. */
function surelyFit({ limits, minFilmTempC, mechanism }: Material, { tempC, rhPercent, surfaceC }: Reach): boolean {
  if (limits !== undefined) {
    const { minTempC, maxTempC, minRhPercent, maxRhPercent, dewMarginK } = limits;
    if (Math.min(tempC[0], surfaceC[0]) < minTempC || Math.max(tempC[1], surfaceC[1]) > maxTempC) return false;
    if (rhPercent[0] < minRhPercent || rhPercent[1] > maxRhPercent) return false;
    const vapour = vapourPressurePa(tempC[1], rhPercent[1]);
    if (saturationPressurePa(surfaceC[0] - dewMarginK) < vapour + CLEAR_PA) return false;
  }
  if (minFilmTempC !== undefined && surfaceC[0] <= minFilmTempC) return false;
  return mechanism !== 'water' || vpdPa(tempC[0], rhPercent[1]) >= LEAST_VPD_PA + CLEAR_PA;
}

/**
 * What the air and the surface reach from `minute` to before `next`, up to which the air goes straight: a surface at `nowC` stays
 * between what it is and what the air is, or as much warmer as is as good as settled.
 */
function reachUntil(air: AirSeries, minute: Minute, next: Minute, nowC: number): Reach {
  const [one, other] = [airAt(air, minute), airAt(air, next)];
  const low = Math.min(one.tempC, other.tempC);
  const high = Math.max(one.tempC, other.tempC);
  return {
    tempC: [low, high],
    rhPercent: [Math.min(one.rhPercent, other.rhPercent), Math.max(one.rhPercent, other.rhPercent)],
    surfaceC: [Math.min(nowC, low), Math.max(nowC, high + SETTLED_WITHIN_K)],
  };
}

/** Until when the film minds the air: dust-free, or else dry to the touch, at the slow end. */
function mindsUntil(laid: LaidFilm, end: Minute): Minute {
  const { marks } = laid.material;
  const mark = marks['dust-free'] === undefined ? 'touch' : 'dust-free';
  return marks[mark] === undefined ? end : (reached(laid, end, mark, 'late') ?? end);
}

/** Longer than any film stays wet: what never dries is told once, not minute by minute. */
const LONGEST_MINUTES = 30 * 1440;

/** A surface this near to that of work which has long stood in the room is as good as it: no thermometer reads closer. */
const SETTLED_WITHIN_K = 0.1;

/** The surface of the work from the start of the coat on: as the room has it, or colder where it has just come in. */
function surfaceOfWork(fact: Fact, laid: LaidFilm, brought: BroughtIn | undefined): (minute: Minute) => number {
  const { thicknessMm } = fact.task;
  const standing = surfaceFrom(laid.air, thicknessMm, surfaceStanding(laid.air, thicknessMm, fact.start));
  if (brought === undefined) return standing;
  const leaves = Math.min(brought.leaves, fact.start);
  const comes = surfaceFrom(laid.air, thicknessMm, surfaceStanding(brought.from, thicknessMm, leaves));
  return (minute) => Math.min(standing(minute), comes(minute) + SETTLED_WITHIN_K);
}

/** The first minute at which the air or the surface of work that came in as `brought` says forbids the coat, and why. */
export function firstUnfit(
  fact: Fact,
  laid: LaidFilm,
  brought: BroughtIn | undefined,
): { minute: Minute; why: string } | undefined {
  const until = Math.min(mindsUntil(laid, fact.end), fact.end + LONGEST_MINUTES);
  const surface = surfaceOfWork(fact, laid, brought);
  for (let from = fact.start; from < until;) {
    const next = Math.min(until, nextSample(laid.air, from));
    const isSure = surelyFit(laid.material, reachUntil(laid.air, from, next, surface(from)));
    for (let minute = from; minute < next && !isSure; minute += 1) {
      const why = unfit(laid.material, airAt(laid.air, minute), surface(minute));
      if (why !== undefined) return { minute, why };
    }
    from = next;
  }
  const keepAbove = laid.material.limits?.keepAbove;
  if (keepAbove === undefined) return undefined;
  const cold = firstColder(laid.air, fact.start, fact.end + Math.ceil(keepAbove.hours * 60), keepAbove.tempC - SLACK);
  if (cold === undefined) return undefined;
  const { tempC } = airAt(laid.air, cold);
  return { minute: cold, why: `${tempC.toFixed(1)} °C is below the ${keepAbove.tempC} °C to be kept until then` };
}

/** The first minute before `to` at which the air is colder than `leastC`: on a straight line, one end is the coldest. */
function firstColder(air: AirSeries, from: Minute, to: Minute, leastC: number): Minute | undefined {
  const isCold = (minute: Minute): boolean => tempAt(air, minute) < leastC;
  for (let start = from; start < to;) {
    const last = Math.min(nextSample(air, start), to) - 1;
    if (isCold(start) || isCold(last))
      for (let minute = start; minute <= last; minute += 1) if (isCold(minute)) return minute;
    start = last + 1;
  }
  return undefined;
}

/**
 * Air and surface inside the material's limits at every minute from the start of application until the film is dust-free,
 * and the air as warm as it asks for the hours after. Work that has come in from a colder room follows the air of the new one.
 * @param of the steps that are looked at
 */
export function airKept(ground: Ground, of: readonly Fact[] = ground.facts): Breach[] {
  const { say } = ground;
  return of
    .filter((f) => !f.settled)
    .flatMap((fact): Breach[] => {
      if (fact.laid === undefined) return [];
      const found = firstUnfit(fact, fact.laid, broughtIn(fact, ground));
      if (found === undefined) return [];
      const text =
        `${say.step(fact.id)} starts ${say.when(fact.start)} and minds the air until ` +
        `${say.when(mindsUntil(fact.laid, fact.end))}, but ${say.when(found.minute)} ${found.why}`;
      return [{ rule: 'air', steps: [fact.id], at: found.minute, text }];
    });
}

import { airAt, type Air, type AirSeries } from '../air/series.ts';
import type { Material } from '../model/material.ts';
import { USUAL_THICKNESS_MM } from '../model/piece.ts';
import { intersect, subtract, type Minute, type Span, type Spans } from '../time/span.ts';
import { breaches, type Breach, type BreachCode } from './air-limits.ts';
import { fitHours, limitsKey } from './fit-hours.ts';
import { warmEnough } from './keep-above.ts';
import { remedied, remedyFor, type Remedy } from './remedy.ts';
import { hindrances, inWords, type Unfit } from './why-unfit.ts';

/** A stretch of hours that are all fit for a material, or all unfit. */
export interface Stretch extends Span {
  readonly fit: boolean;
  /** Why the stretch is unfit, each reason once, as it is at its worst; empty if fit. */
  readonly why: readonly Unfit[];
}

/** A stretch, and what, from its start on, would make the whole of it fit; absent if fit, or if nothing would. */
export interface StretchToMend extends Stretch {
  readonly remedy?: Remedy;
}

/**
 * The minutes of `from` to `to` at which a dab of `material` may go on a board of usual thickness that has stood in the room:
 * the same hours, and the same cold to come, that a coat is planned by.
 */
export function fitMinutes(material: Material, series: AirSeries, from: Minute, to: Minute): Spans {
  const fit = fitHours(material, series, from, to, USUAL_THICKNESS_MM);
  const keepAbove = material.limits?.keepAbove;
  return keepAbove === undefined ? fit : intersect(fit, warmEnough(keepAbove, series, 1));
}

const LOOK_MINUTES = 15;

/** Its first and last minute, and the quarters of an hour between. */
function looksAt({ start, end }: Span): readonly Minute[] {
  const first = LOOK_MINUTES * Math.ceil((start + 1) / LOOK_MINUTES);
  const between = Array.from({ length: Math.max(0, Math.ceil((end - 1 - first) / LOOK_MINUTES)) }, (_, i) => i);
  const minutes = [start, ...between.map((i) => first + i * LOOK_MINUTES), end - 1];
  return [...new Set(minutes)];
}

function worstOf(found: readonly Breach[]): readonly Breach[] {
  const worst = new Map<BreachCode, Breach>();
  for (const unfit of found) {
    const known = worst.get(unfit.code);
    if (known === undefined || Math.abs(unfit.is - unfit.limit) > Math.abs(known.is - known.limit))
      worst.set(unfit.code, unfit);
  }
  return [...worst.values()];
}

function whyNot(material: Material, series: AirSeries, span: Span): readonly Unfit[] {
  return inWords(worstOf(looksAt(span).flatMap((m) => hindrances(material, series, m, USUAL_THICKNESS_MM))));
}

/** The hours of `from` to `to` as stretches fit or unfit, exact to the minute. */
export function fitStretches(material: Material, series: AirSeries, from: Minute, to: Minute): readonly Stretch[] {
  const fit = fitMinutes(material, series, from, to);
  return [
    ...fit.map((span) => ({ ...span, fit: true, why: [] })),
    ...subtract([{ start: from, end: to }], fit).map((span) => ({
      ...span,
      fit: false,
      why: whyNot(material, series, span),
    })),
  ].sort((a, b) => a.start - b.start);
}

/** The same, and what would make the unfit ones fit. */
export function fitOutlook(material: Material, series: AirSeries, from: Minute, to: Minute): readonly StretchToMend[] {
  return fitStretches(material, series, from, to).map((stretch) => {
    const remedy = stretch.fit ? undefined : remedyForAll(material, series, stretch);
    return { ...stretch, ...(remedy === undefined ? {} : { remedy }) };
  });
}

/** `work` for each of the materials, done once for those that share all their limits. */
export function oncePerLimits<T>(materials: readonly Material[], work: (material: Material) => T): readonly T[] {
  const known = new Map<string, T>();
  return materials.map((material) => {
    const key = limitsKey(material);
    const done = known.get(key) ?? work(material);
    known.set(key, done);
    return done;
  });
}

/** More rounds than this find no air that the ones before have not. */
const MOST_ROUNDS = 8;

/**
 * The strongest of the remedies that the minutes of a stretch ask for, if it makes them all fit. What is heated for a
 * material that must be kept warm afterwards is heated for that; where only the work is still cold, waiting is all it takes.
 */
function remedyForAll(material: Material, series: AirSeries, stretch: Stretch): Remedy | undefined {
  const airs = Array.from({ length: stretch.end - stretch.start }, (_, i) => airAt(series, stretch.start + i));
  const unfitIn = (remedy: Remedy) => airs.filter((air) => breaches(material, remedied(air, remedy)).length > 0);
  const coldAhead = stretch.why.some((w) => w.code === 'cold-ahead');
  const looked = looksAt(stretch).map((minute) => airAt(series, minute));
  let unfit: readonly Air[] = looked.filter((air) => breaches(material, air).length > 0);
  if (unfit.length === 0) unfit = unfitIn({});
  if (unfit.length === 0 && !coldAhead) return { wait: true };
  let remedy: Remedy = coldAhead ? keptWarm(material, {}) : {};
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const stronger = strengthened(material, remedy, unfit);
    if (stronger === undefined) return undefined;
    remedy = stronger;
    unfit = unfitIn(remedy);
    if (unfit.length === 0) return remedy;
  }
  return undefined;
}

/** The remedy, and all that each of the airs asks for; undefined where nothing helps one of them. */
function strengthened(material: Material, remedy: Remedy, airs: readonly Air[]): Remedy | undefined {
  let { heatToC = -Infinity, dryToRhPercent = Infinity } = remedy;
  for (const air of airs) {
    const own = remedyFor(material, air);
    if (own === undefined) return undefined;
    heatToC = Math.max(heatToC, own.heatToC ?? -Infinity);
    dryToRhPercent = Math.min(dryToRhPercent, own.dryToRhPercent ?? Infinity);
  }
  const dried = dryToRhPercent < Infinity ? { dryToRhPercent } : {};
  if (heatToC === -Infinity) return { ...remedy, ...dried };
  return { ...keptWarm(material, { heatToC }), ...dried };
}

/** Heating as long, and at least as far, as the material must be kept warm. */
function keptWarm({ limits }: Material, { heatToC = -Infinity }: Remedy): Remedy {
  const kept = limits?.keepAbove;
  if (kept === undefined) return { heatToC };
  return { heatToC: Math.max(heatToC, kept.tempC), thenKeep: { tempC: kept.tempC, hours: kept.hours } };
}

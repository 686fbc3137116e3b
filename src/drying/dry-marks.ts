import type { AirSeries } from '../air/series.ts';
import { marks, type Mark, type Pace, type Spread } from '../model/mark.ts';
import type { Film, Material } from '../model/material.ts';
import type { MarkTimes } from '../model/plan.ts';
import type { Minute } from '../time/span.ts';
import { shift, type TimeMap } from '../time/time-map.ts';
import { reached } from './dose-map.ts';
import { doseOf } from './dose.ts';
import { filmFactor } from './film-factor.ts';
import { rateLaw } from './rate-law.ts';

/** The figure of a spread that a pace means: all goes fast, as usual, or slowly. */
export function atPace(spread: Spread, pace: Pace): number {
  return pace === 'early' ? spread.low : pace === 'typical' ? spread.typical : spread.high;
}

/**
 * From the end of application to the minute (rounded up) at which `film` has reached `mark` in `air`. `factor` is what
 * the shop has learned of its own: times the sheet's hours. A mark that the material does not have asks no wait. NEVER if
 * the mark is not reached within 400 days of the end of the air's record.
 */
export function dryMap(material: Material, mark: Mark, pace: Pace, film: Film, air: AirSeries, factor = 1): TimeMap {
  const sheet = material.marks[mark];
  if (sheet === undefined) return shift(0);
  const hours = atPace(sheet, pace) * filmFactor(material, film) * factor;
  return reached(doseOf(air, rateLaw(material, mark)), hours);
}

/** When a film finished at `endMinute` reaches each mark that its material has. */
export function markTimes(
  material: Material,
  film: Film,
  air: AirSeries,
  endMinute: Minute,
  factor = 1,
): Partial<Record<Mark, MarkTimes>> {
  const times: Partial<Record<Mark, MarkTimes>> = {};
  for (const mark of marks) {
    if (material.marks[mark] === undefined) continue;
    const when = (pace: Pace): Minute => dryMap(material, mark, pace, film, air, factor).at(endMinute);
    times[mark] = { early: when('early'), typical: when('typical'), late: when('late') };
  }
  return times;
}

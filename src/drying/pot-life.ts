import type { AirSeries } from '../air/series.ts';
import type { Pace } from '../model/mark.ts';
import type { Material } from '../model/material.ts';
import { shift, soonerOf, type TimeMap } from '../time/time-map.ts';
import { notYetPast } from './dose-map.ts';
import { doseOf } from './dose.ts';
import { atPace } from './dry-marks.ts';
import { rateLaw } from './rate-law.ts';

/**
 * From mixing to the last minute at which a two-part material may still be worked, at the air it is mixed in; undefined
 * if it has no pot life. Putty and filler, known by the depth their sheet is for, are mixed in small batches while the
 * step goes on (common practice, no source): their pot life bounds the batch, not the step. Same law as its cure. Never longer than the sheet's own hours: a pot heats itself. `early` is
 * the safe pace.
 */
export function potLifeMap(material: Material, air: AirSeries, pace: Pace = 'early'): TimeMap | undefined {
  if (material.potLife === undefined || material.sheetDepthMm !== undefined) return undefined;
  const hours = atPace(material.potLife, pace);
  const dose = doseOf(air, rateLaw(material, 'dust-free'));
  return soonerOf([notYetPast(dose, hours), shift(Math.floor(hours * 60))]);
}

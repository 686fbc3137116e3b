import type { AirSeries } from '../air/series.ts';
import type { Spread } from '../model/mark.ts';
import type { Film, Material } from '../model/material.ts';
import { shift, soonerOf, type TimeMap } from '../time/time-map.ts';
import { notYetPast, reached } from './dose-map.ts';
import { doseOf } from './dose.ts';
import { filmFactor } from './film-factor.ts';
import { rateLaw } from './rate-law.ts';

/** From the end of one coat to the first and the last minute at which the next may begin. */
export interface WindowMaps {
  readonly opens: TimeMap;
  /** Absent: never shuts. */
  readonly shuts?: TimeMap;
}

/**
 * The edges of a recoat window in the room's air: opening by the slow end of its spread, shutting by the fast end, so
 * that a plan holds on both. Opening moves both ways with the air. Shutting comes sooner in warm dry air and never later
 * than the sheet's hours, in whatever cold: no one has measured how much longer a cold film would take the next coat.
 */
export function windowMaps(
  window: { readonly opens: Spread; readonly shuts?: Spread },
  material: Material,
  film: Film,
  air: AirSeries,
  factor = 1,
): WindowMaps {
  const dose = doseOf(air, rateLaw(material, 'recoat'));
  const scale = filmFactor(material, film) * factor;
  const opens = reached(dose, window.opens.high * scale);
  if (window.shuts === undefined) return { opens };
  const sheetMinutes = Math.floor(window.shuts.low * 60);
  return { opens, shuts: soonerOf([notYetPast(dose, window.shuts.low * scale), shift(sheetMinutes)]) };
}

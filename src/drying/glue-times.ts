import type { Air } from '../air/series.ts';
import type { Material } from '../model/material.ts';
import { rateLaw } from './rate-law.ts';

/** Minutes that a glue, filler or stain leaves for the work, by the fast end of its spread. */
export interface WorkingTimes {
  /** From spreading to closing the joint, or to leaving a filler alone. */
  readonly openMinutes?: number;
  /** From closing the joint to full pressure. */
  readonly closedMinutes?: number;
  /** From application to wiping the excess off. */
  readonly wipeOffMinutes?: number;
}

/** A gelling glue's open time halves with every so many kelvin less (design suggestion: cold gels it sooner). */
const GEL_HALVES_EVERY_K = 10;

/**
 * Working times in this air. What dries is open for less in warm dry air, and never longer than its sheet says in cold
 * air; hot hide glue gels by cooling, so cold shortens its time instead (common practice, no source).
 */
export function workingTimes(material: Material, air: Air): WorkingTimes {
  const speed = rateLaw(material, 'dust-free').rate(air.tempC, air.rhPercent);
  const gel = 2 ** ((material.reference.tempC - air.tempC) / GEL_HALVES_EVERY_K);
  const quickest = Math.max(1, speed, material.mechanism === 'hide-glue' ? gel : 1);
  const minutes = (hours: number): number => (hours * 60) / quickest;
  const { openTime, closedTime, wipeOff } = material;
  return {
    ...(openTime === undefined ? {} : { openMinutes: minutes(openTime.low) }),
    ...(closedTime === undefined ? {} : { closedMinutes: minutes(closedTime.low) }),
    ...(wipeOff === undefined ? {} : { wipeOffMinutes: minutes(wipeOff.low) }),
  };
}

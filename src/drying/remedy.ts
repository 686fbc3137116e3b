import { rhAfterHeating } from '../air/psychrometrics.ts';
import type { Air } from '../air/series.ts';
import type { Material } from '../model/material.ts';
import { breaches } from './air-limits.ts';

/** What would make an unfit hour fit: the least heating, or the least drying, or both. */
export interface Remedy {
  readonly heatToC?: number;
  /** Warmth that must last after the coat is laid on. */
  readonly thenKeep?: { readonly tempC: number; readonly hours: number };
  /** As a dehumidifier is set, at the (heated) temperature. */
  readonly dryToRhPercent?: number;
  /** The air is fit: only the work is still colder than it. */
  readonly wait?: true;
}

/** The air after the remedy; heating holds the water in it. */
export function remedied(air: Air, { heatToC, dryToRhPercent = 100 }: Remedy): Air {
  const tempC = Math.max(air.tempC, heatToC ?? air.tempC);
  return { tempC, rhPercent: Math.min(dryToRhPercent, rhAfterHeating(air.tempC, air.rhPercent, tempC)) };
}

/** Heating is told in steps that a thermostat can be set to. */
const STEP_K = 0.5;
const STEP_PERCENT = 5;
/** Nobody heats a shop by more than this for one coat. */
const MOST_HEATING_K = 25;
const LEAST_DRIED_TO_PERCENT = 40;

/**
 * The gentlest remedy for air in which `material` may not go on: heating alone at constant humidity ratio, the surface
 * warmed through; else drying alone; else the least heating with some drying. Undefined if none helps (too warm, too dry).
 */
export function remedyFor(material: Material, air: Air): Remedy | undefined {
  const fits = (trial: Air): boolean => breaches(material, trial).length === 0;
  const heated = (heatToC: number): Air => remedied(air, { heatToC });
  const temps: number[] = [];
  const first = STEP_K * (Math.floor(air.tempC / STEP_K) + 1);
  for (let tempC = first; tempC <= air.tempC + MOST_HEATING_K; tempC += STEP_K) temps.push(tempC);
  const heatToC = temps.find((tempC) => fits(heated(tempC)));
  if (heatToC !== undefined) return { heatToC };
  const driedFrom = (at: Air): number | undefined => {
    const from = STEP_PERCENT * Math.floor((at.rhPercent - 1e-9) / STEP_PERCENT);
    for (let rh = from; rh >= LEAST_DRIED_TO_PERCENT; rh -= STEP_PERCENT)
      if (fits({ tempC: at.tempC, rhPercent: rh })) return rh;
    return undefined;
  };
  const alone = driedFrom(air);
  if (alone !== undefined) return { dryToRhPercent: alone };
  for (const tempC of temps) {
    const dryToRhPercent = driedFrom(heated(tempC));
    if (dryToRhPercent !== undefined) return { heatToC: tempC, dryToRhPercent };
  }
  return undefined;
}

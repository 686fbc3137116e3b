import { at } from '../at.ts';
import type { AirSeries } from '../air/series.ts';
import type { Mark, Spread } from '../model/mark.ts';
import type { Film, Material } from '../model/material.ts';
import type { Minute } from '../time/span.ts';
import { NEVER, type TimeMap } from '../time/time-map.ts';
import { reached } from './dose-map.ts';
import { doseOf, type Dose } from './dose.ts';
import { filmFactor } from './film-factor.ts';
import { deviates, type Deviates } from './random.ts';
import { rateLaw } from './rate-law.ts';
import { drawing } from './spread.ts';

/** One step on the way to a date: a mark that dries as it will, or anything that is certain (work, opening hours). */
export type Link =
  | {
      readonly kind: 'dry';
      readonly material: Material;
      readonly mark: Mark;
      readonly film: Film;
      readonly air: AirSeries;
      /** What the shop has learned: times the sheet's hours. */
      readonly factor?: number;
    }
  | { readonly kind: 'then'; readonly map: TimeMap };

export interface ChanceOptions {
  readonly seed: number;
  /** How many times the chain is lived through; 2000 puts a 90 % date within about 0.7 % of its chance. */
  readonly worlds?: number;
  /**
   * How unsure the speed is that the room's air gives, as a standard deviation of its logarithm: a tenth by default
   * (design suggestion: some 2 K, or 10 % RH, off the forecast).
   */
  readonly airDeviation?: number;
}

/** Half of the variance of a material's hours is the can's, common to all its coats, half each coat's (design suggestion). */
const SHARE_OF_THE_CAN = 0.5;

/** When a chain ends in each of many worlds, sorted; NEVER where it does not. The first link starts at `start`. */
export function simulateEnds(start: Minute, chain: readonly Link[], options: ChanceOptions): readonly Minute[] {
  const { seed, worlds = 2000, airDeviation = 0.1 } = options;
  const links = chain.map(prepared);
  const random = deviates(seed);
  const ends = Array.from({ length: worlds }, () => {
    const world = newWorld(random, airDeviation);
    return links.reduce((now, link) => (now >= NEVER ? NEVER : link(now, world)), start);
  });
  return ends.sort((a, b) => a - b);
}

interface World {
  readonly random: Deviates;
  readonly airFactor: number;
  readonly cans: Map<string, number>;
}

function newWorld(random: Deviates, airDeviation: number): World {
  return { random, airFactor: Math.exp(airDeviation * random.normal()), cans: new Map() };
}

function canOf(world: World, material: string): number {
  let can = world.cans.get(material);
  if (can === undefined) world.cans.set(material, (can = world.random.normal()));
  return can;
}

function prepared(link: Link): (now: Minute, world: World) => Minute {
  if (link.kind === 'then') return (now) => link.map.at(now);
  const { sheet, dose, scale } = drying(link);
  if (sheet === undefined) return (now) => now;
  const hoursAt = drawing(sheet);
  return (now, world) => {
    const own = world.random.normal();
    const can = canOf(world, link.material.id);
    const z = Math.sqrt(SHARE_OF_THE_CAN) * can + Math.sqrt(1 - SHARE_OF_THE_CAN) * own;
    return reached(dose, hoursAt(z) * scale * world.airFactor).at(now);
  };
}

function drying(link: Extract<Link, { kind: 'dry' }>): { sheet: Spread | undefined; dose: Dose; scale: number } {
  return {
    sheet: link.material.marks[link.mark],
    dose: doseOf(link.air, rateLaw(link.material, link.mark)),
    scale: filmFactor(link.material, link.film) * (link.factor ?? 1),
  };
}

export interface Promised {
  /** If everything takes its typical time. */
  readonly typical: Minute;
  /** Holds with `chance`. */
  readonly safe: Minute;
  readonly chance: number;
}

/** The typical end of a chain, and the end that holds with the stated chance (0 to 1). */
export function promised(start: Minute, chain: readonly Link[], chance: number, options: ChanceOptions): Promised {
  const typical = chain.reduce((now, link) => {
    if (now >= NEVER) return NEVER;
    if (link.kind === 'then') return link.map.at(now);
    const { sheet, dose, scale } = drying(link);
    return sheet === undefined ? now : reached(dose, sheet.typical * scale).at(now);
  }, start);
  const ends = simulateEnds(start, chain, options);
  return { typical, safe: Math.max(typical, endWithChance(ends, chance)), chance };
}

/** The end that at least `chance` of the sorted worlds keep. */
export function endWithChance(ends: readonly Minute[], chance: number): Minute {
  return at(ends, Math.min(ends.length - 1, Math.max(0, Math.ceil(chance * ends.length) - 1)));
}

/** Share of the sorted worlds that have ended by `deadline`, 0 to 1. */
export function chanceBy(ends: readonly Minute[], deadline: Minute): number {
  return ends.filter((end) => end <= deadline).length / ends.length;
}

import { isFullCoat } from '../model/film-needs.ts';
import type { Family, Material } from '../model/material.ts';
import type { Recipe, RecipeStep } from '../model/recipe.ts';

/** A material by id; undefined where there is none. */
export type MaterialOf = (id: string) => Material | undefined;

function materialIn(step: RecipeStep, materialOf: MaterialOf): Material | undefined {
  return step.material === undefined ? undefined : materialOf(step.material);
}

/** Does the step lay a film over all of the section? */
export function laysFilm(step: RecipeStep, materialOf: MaterialOf): boolean {
  const material = materialIn(step, materialOf);
  return material !== undefined && isFullCoat(material);
}

function firstFilm(recipe: Recipe, materialOf: MaterialOf): Material | undefined {
  const step = recipe.steps.find((s) => laysFilm(s, materialOf));
  return step && materialIn(step, materialOf);
}

const paints: readonly Family[] = ['water-borne', 'alkyd', 'chalk-paint', 'two-part', 'lacquer'];

/** Does the recipe hide the wood? */
export function isPainted(recipe: Recipe, materialOf: MaterialOf): boolean {
  return recipe.steps.some((step) => {
    const material = step.stage === 'coat' ? materialIn(step, materialOf) : undefined;
    return material !== undefined && paints.includes(material.family);
  });
}

/** Does its finish have to reach the wood, so that nothing may fill or seal it first? */
export function drinksIn(recipe: Recipe, materialOf: MaterialOf): boolean {
  return firstFilm(recipe, materialOf)?.family === 'oil';
}

/** Does its first film shut tannin, knots and smells in? Shellac does: common practice, no source. */
export function sealsFirst(recipe: Recipe, materialOf: MaterialOf): boolean {
  return firstFilm(recipe, materialOf)?.family === 'shellac';
}

export function usesMaterial(recipe: Recipe, material: string): boolean {
  return recipe.steps.some((step) => step.material === material);
}

/** Its own steps that glue joints. */
export function gluingSteps(recipe: Recipe, materialOf: MaterialOf): string[] {
  return recipe.steps
    .filter((step) => step.stage === 'repair' && materialIn(step, materialOf)?.family === 'glue')
    .map((step) => step.id);
}

/** Its steps that take an old finish off, and wash off what took it off. */
export function strippingSteps(recipe: Recipe): string[] {
  const strip = recipe.steps.findIndex((step) => step.stage === 'clean' && step.disturbsOldPaint);
  const after = recipe.steps.slice(strip, strip + 2);
  return strip < 0 ? [] : after.filter((step) => step.stage === 'clean').map((step) => step.id);
}

/** Is it for all of a piece, round the work on its sections? */
export function isForWhole(recipe: Recipe): boolean {
  return recipe.steps.some((step) => step.joins !== undefined);
}

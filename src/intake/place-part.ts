import type { PartSlot, Section } from '../model/piece.ts';
import type { Recipe, RecipeStep } from '../model/recipe.ts';
import { faultFaces, GRAIN_PART } from './found.ts';
import { laysFilm, type MaterialOf } from './recipe-traits.ts';

/** How many things `check` would say of a section as it is given. */
export type CountProblems = (section: Section) => number;

const preparing: readonly RecipeStep['stage'][] = ['clean', 'dismantle', 'inspect'];

/**
 * Before which step of a recipe a part belongs: glue before fill before sand before the first film. Common practice, no
 * source.
 */
function usualPlace(part: string, recipe: Recipe, materialOf: MaterialOf): number {
  const { steps } = recipe;
  const firstOf = (is: (step: RecipeStep) => boolean) => steps.findIndex(is);
  const firstFilm = firstOf((s) => laysFilm(s, materialOf));
  switch (part) {
    case faultFaces['joints-loose'].part:
      return firstOf((s) => !preparing.includes(s.stage));
    case faultFaces['veneer-loose'].part:
    case faultFaces['runner-missing'].part:
      return firstOf((s) => !preparing.includes(s.stage) && s.stage !== 'repair');
    case faultFaces.gouges.part:
      return firstOf((s) => s.stage === 'sand');
    case GRAIN_PART:
      return steps.slice(0, Math.max(0, firstFilm)).findLastIndex((s) => s.stage === 'sand') + 1;
    default:
      return firstFilm;
  }
}

/** All places from the usual one on outwards. */
function placesFrom(usual: number, count: number): number[] {
  const places = Array.from({ length: count }, (_, i) => i);
  return places.sort((a, b) => Math.abs(a - usual) - Math.abs(b - usual));
}

/**
 * Slots a part into a section after those that it has already, at its usual place or the nearest one at which the trade
 * and the films around have nothing to say against it; undefined where there is no such place.
 */
export function placePart(
  part: string,
  section: Section,
  recipe: Recipe,
  materialOf: MaterialOf,
  problems: CountProblems,
): Section | undefined {
  const kept = recipe.steps.filter((step) => !section.without.includes(step.id));
  const usual = usualPlace(part, { ...recipe, steps: kept }, materialOf);
  const most = problems(section);
  const slots = placesFrom(Math.max(0, usual), kept.length).flatMap((index): PartSlot[] => {
    const step = kept[index];
    return step === undefined ? [] : [{ part, before: step.id }];
  });
  return slots
    .map((slot): Section => ({ ...section, with: [...(section.with ?? []), slot] }))
    .find((candidate) => problems(candidate) <= most);
}

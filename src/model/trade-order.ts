import { coarsestOnFilm, gritBetween, isGritJump } from './grit.ts';
import { isFullCoat } from './film-needs.ts';
import type { Mark } from './mark.ts';
import type { Material } from './material.ts';
import type { Recipe, RecipeStep } from './recipe.ts';
import { type ChainStep, sectionSteps } from './section-steps.ts';
import { worded } from '../words/worded.ts';

/** One thing in the order of a section's steps that the trade would not do. All rules: common practice, no source. */
export interface TradeProblem {
  readonly code:
    | 'grit-goes-back'
    | 'grit-jump'
    | 'dust-under-coat'
    | 'tape-too-soon'
    | 'tape-on-wax'
    | 'coat-over-wax'
    | 'glue-after-fill'
    | 'fill-not-sanded'
    | 'sands-what-stays-soft'
    | 'grain-not-raised';
  /** Id of the step at fault, coats counted out. */
  readonly step: string;
  readonly message: string;
  readonly advice: string;
}

interface Laid {
  readonly id: string;
  readonly step: RecipeStep;
  readonly material?: Material;
}

/** Marks at which tape does no harm. */
export const asSafeAsTape: readonly Mark[] = ['tape', 'stack', 'cure'];

function laysFilm(laid: Laid): boolean {
  return laid.material !== undefined && laid.material.mechanism !== 'none' && laid.material.family !== 'cleaner';
}

function isCoat(laid: Laid): boolean {
  return laid.material !== undefined && isFullCoat(laid.material);
}

/** What happened since the last step that `ends` it, up to but without step `index`. */
function since(chain: readonly Laid[], index: number, ends: (laid: Laid) => boolean): readonly Laid[] {
  const before = chain.slice(0, index);
  return before.slice(before.findLastIndex(ends) + 1);
}

function gritProblems(chain: readonly Laid[]): TradeProblem[] {
  return chain.flatMap(({ id, step }, index): TradeProblem[] => {
    const last = since(chain, index, laysFilm).findLast((l) => l.step.grit !== undefined)?.step.grit;
    if (step.grit === undefined || last === undefined) return [];
    const words = worded`${last} and then ${step.grit} on the same surface`;
    if (step.grit < last)
      return [{ code: 'grit-goes-back', step: id, message: words, advice: worded`sand from coarse to fine` }];
    if (!isGritJump(last, step.grit)) return [];
    const between = gritBetween(last, step.grit);
    const advice = worded`pass over one grade at most: sand with ${between} in between`;
    return [{ code: 'grit-jump', step: id, message: words, advice }];
  });
}

function takesDustOff({ step }: Laid): boolean {
  return step.stage === 'clean' || step.supplies.includes('tack-cloth');
}

function dustProblems(chain: readonly Laid[]): TradeProblem[] {
  return chain.filter(isCoat).flatMap((coat): TradeProblem[] => {
    const sinceCoat = since(chain, chain.indexOf(coat), isCoat);
    const dusty = sinceCoat.findLastIndex((l) => l.step.stage === 'sand' || l.step.dusty);
    if (dusty < 0 || sinceCoat.slice(dusty).some(takesDustOff)) return [];
    const advice = worded`add a tack cloth to the last sanding, or a step that cleans`;
    return [{ code: 'dust-under-coat', step: coat.id, message: worded`goes on over sanding dust`, advice }];
  });
}

function tapeProblems(chain: readonly Laid[]): TradeProblem[] {
  return chain.flatMap(({ id, step }, index): TradeProblem[] => {
    if (step.stage !== 'mask') return [];
    const below = chain.slice(0, index).findLast(isCoat);
    if (below === undefined) return [];
    if (below.material?.family === 'wax')
      return [
        {
          code: 'tape-on-wax',
          step: id,
          message: worded`tape does not hold on wax`,
          advice: worded`mask before the wax`,
        },
      ];
    if (step.needs === undefined || asSafeAsTape.includes(step.needs)) return [];
    const message = worded`tapes over "${below.id}" at its mark ${step.needs}`;
    return [{ code: 'tape-too-soon', step: id, message, advice: worded`leave out needs, or write needs: tape` }];
  });
}

function waxProblems(chain: readonly Laid[]): TradeProblem[] {
  const firstWax = chain.findIndex((l) => l.material?.family === 'wax' && isCoat(l));
  if (firstWax < 0) return [];
  return chain
    .slice(firstWax + 1)
    .filter((l) => laysFilm(l) && l.material?.family !== 'wax' && l.material?.family !== 'tape')
    .map(({ id }) => ({
      code: 'coat-over-wax',
      step: id,
      message: worded`nothing but wax sticks over wax`,
      advice: worded`wax last, when all paint, filler and glue is done`,
    }));
}

function repairProblems(chain: readonly Laid[]): TradeProblem[] {
  return chain.flatMap((laid, index): TradeProblem[] => {
    const family = laid.material?.family;
    const sinceCoat = since(chain, index, isCoat);
    if (family === 'glue' && sinceCoat.some((l) => l.material?.family === 'filler')) {
      const advice = worded`glue first: clamps shift the joint and crack the fill`;
      return [{ code: 'glue-after-fill', step: laid.id, message: worded`glues after the fill`, advice }];
    }
    if (family !== 'filler') return [];
    const next = chain.slice(index + 1);
    const coat = next.findIndex(isCoat);
    const sanding = (coat < 0 ? next : next.slice(0, coat)).find((l) => l.step.stage === 'sand');
    const sandable = laid.material?.marks.sand !== undefined;
    if (sandable && sanding === undefined && coat >= 0)
      return [
        {
          code: 'fill-not-sanded',
          step: laid.id,
          message: worded`is coated unsanded`,
          advice: worded`sand the fill level`,
        },
      ];
    if (sandable || sanding === undefined) return [];
    const message = worded`sands "${laid.id}", which never sands`;
    return [
      { code: 'sands-what-stays-soft', step: sanding.id, message, advice: worded`sand first, then caulk, then coat` },
    ];
  });
}

function carriesWater(material: Material | undefined): boolean {
  return material !== undefined && (material.mechanism === 'water' || material.mechanism === 'wood-water');
}

function grainProblems(chain: readonly Laid[]): TradeProblem[] {
  const first = chain.findIndex(isCoat);
  const coat = chain[first];
  // A primer raises the grain itself and is sanded before the paint.
  if (coat === undefined || coat.step.stage === 'prime' || !carriesWater(coat.material)) return [];
  const before = chain.slice(0, first);
  const bareWood = before.some((l) => l.step.grit !== undefined && l.step.grit <= coarsestOnFilm);
  const wetted = before.findIndex((l) => l.material?.family === 'cleaner' && carriesWater(l.material));
  const lastSanding = before.findLastIndex((l) => l.step.stage === 'sand');
  if (!bareWood || (wetted >= 0 && wetted < lastSanding)) return [];
  const advice = worded`damp the wood, let it dry and knock the grain back first, or put a sealer under it`;
  return [{ code: 'grain-not-raised', step: coat.id, message: worded`raises the grain of bare wood`, advice }];
}

/** What the trade would not do in the order of these steps; `materialOf` knows the section's replaced materials. */
export function tradeProblems(
  steps: readonly ChainStep[],
  materialOf: (id: string) => Material | undefined,
): TradeProblem[] {
  const chain = steps.map(({ id, recipeStep }): Laid => {
    const material = recipeStep.material === undefined ? undefined : materialOf(recipeStep.material);
    return { id, step: recipeStep, ...(material && { material }) };
  });
  return [gritProblems, dustProblems, tapeProblems, waxProblems, repairProblems, grainProblems].flatMap((rule) =>
    rule(chain),
  );
}

/** The same for a recipe as it stands, nothing left out or replaced. */
export function recipeTradeProblems(recipe: Recipe, materials: ReadonlyMap<string, Material>): TradeProblem[] {
  return tradeProblems(sectionSteps(recipe.steps, { without: [] }), (id) => materials.get(id));
}

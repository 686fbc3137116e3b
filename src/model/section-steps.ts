import type { Section } from './piece.ts';
import type { RecipeStep } from './recipe.ts';

/** One step of a section's chain, after coats are counted out. */
export interface ChainStep {
  readonly id: string;
  readonly recipeStep: RecipeStep;
  readonly coat?: number;
}

function oneOf(step: RecipeStep, id: string, coat?: number): ChainStep {
  return coat === undefined ? { id, recipeStep: step } : { id, recipeStep: step, coat };
}

function coatsOf(step: RecipeStep, without: ReadonlySet<string>): ChainStep[] {
  if (step.coats === 1) return [oneOf(step, step.id)];
  const between = step.between.filter((s) => !without.has(s.id));
  return Array.from({ length: step.coats }, (_, i) => i + 1).flatMap((coat) => [
    ...(coat === 1 ? [] : between.map((b) => oneOf(b, `${b.id}-${coat - 1}`))),
    oneOf(step, `${step.id}-${coat}`, coat),
  ]);
}

/** The steps of one section in order: left-out ones gone, `coats: 2` become `coat-1`, `coat-2`. */
export function sectionSteps(steps: readonly RecipeStep[], section: Pick<Section, 'without'>): ChainStep[] {
  const without = new Set(section.without);
  return steps.filter((s) => !without.has(s.id)).flatMap((s) => coatsOf(s, without));
}

/** The step that a reference names: for `after` the last of its coats, for `before` the first. */
export function findStep(chain: readonly ChainStep[], name: string, which: 'first' | 'last'): ChainStep | undefined {
  const exact = chain.find((s) => s.id === name);
  if (exact !== undefined) return exact;
  const coats = chain.filter((s) => s.recipeStep.id === name);
  return which === 'first' ? coats[0] : coats.at(-1);
}

function targetIn(section: string, links: RecipeStep['after'], chain: readonly ChainStep[], which: 'first' | 'last') {
  for (const link of links ?? []) {
    const [where, step] = link.step.includes('/') ? link.step.split('/') : [section, link.step];
    if (where !== section || step === undefined) continue;
    const found = findStep(chain, step, which);
    if (found !== undefined) return chain.indexOf(found);
  }
  return undefined;
}

/** Puts a joining step into its section's chain: before what it must precede, else after what it follows, else last. */
export function insertJoin(chain: readonly ChainStep[], join: RecipeStep & { section: string }): ChainStep[] {
  const before = targetIn(join.section, join.before, chain, 'first');
  const after = targetIn(join.section, join.after, chain, 'last');
  const position = before ?? (after === undefined ? chain.length : after + 1);
  return [...chain.slice(0, position), ...coatsOf(join, new Set()), ...chain.slice(position)];
}

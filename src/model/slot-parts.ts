import type { PartSlot } from './piece.ts';
import type { Recipe, RecipeStep, StepLink } from './recipe.ts';

/** Something that does not fit in a section's list of parts; `slot` counts from 0. */
export interface SlotProblem {
  readonly slot: number;
  readonly code: 'unknown-part' | 'unknown-step' | 'part-twice' | 'before-and-after';
  /** The word that does not fit. */
  readonly word: string;
}

/** What is wrong with `slots`, in their order; empty where `slotParts` may be called. */
export function slotProblems(
  steps: readonly RecipeStep[],
  slots: readonly PartSlot[],
  parts: ReadonlyMap<string, Recipe>,
): SlotProblem[] {
  const ids = new Set(steps.map((s) => s.id));
  return slots.flatMap((slot, index): SlotProblem[] => [
    ...(parts.has(slot.part) ? [] : [{ slot: index, code: 'unknown-part' as const, word: slot.part }]),
    ...(slots.findIndex((s) => s.part === slot.part) < index
      ? [{ slot: index, code: 'part-twice' as const, word: slot.part }]
      : []),
    ...(slot.before !== undefined && slot.after !== undefined
      ? [{ slot: index, code: 'before-and-after' as const, word: slot.part }]
      : []),
    ...[slot.before, slot.after].flatMap((step) =>
      step === undefined || ids.has(step) ? [] : [{ slot: index, code: 'unknown-step' as const, word: step }],
    ),
  ]);
}

/** The steps of a part under the names they bear in a recipe: `PART-STEP`, references among them renamed too. */
export function partSteps(part: Recipe): RecipeStep[] {
  const own = new Set(part.steps.flatMap((s) => [s.id, ...s.between.map((b) => b.id)]));
  const named = (step: string): string => (own.has(step) ? `${part.id}-${step}` : step);
  const renamed = (links: readonly StepLink[]): StepLink[] => links.map((l) => ({ ...l, step: named(l.step) }));
  const asSlotted = (step: RecipeStep): RecipeStep => ({
    ...step,
    id: named(step.id),
    between: step.between.map(asSlotted),
    ...(step.after && { after: renamed(step.after) }),
    ...(step.before && { before: renamed(step.before) }),
    ...(step.unmasks !== undefined && { unmasks: named(step.unmasks) }),
  });
  return part.steps.map(asSlotted);
}

/** A step that names what it comes after would not wait for what was slotted in front of it: it does so now. */
function awaiting(step: RecipeStep, last: RecipeStep | undefined): RecipeStep {
  return step.after === undefined || last === undefined ? step : { ...step, after: [...step.after, { step: last.id }] };
}

function slotOne(steps: readonly RecipeStep[], slot: PartSlot, inserted: readonly RecipeStep[]): RecipeStep[] {
  const anchor = steps.findIndex((s) => s.id === (slot.before ?? slot.after));
  const position = slot.after === undefined ? Math.max(0, anchor) : anchor + 1;
  const [next, ...rest] = steps.slice(position);
  return [
    ...steps.slice(0, position),
    ...inserted,
    ...(next === undefined ? [] : [awaiting(next, inserted.at(-1)), ...rest]),
  ];
}

/**
 * A recipe's steps with the parts of a section slotted in, in the order of the list: of two at the same step the later
 * one comes nearer to it.
 * Expects slots in which `slotProblems` finds nothing; what they name and is not there is left out.
 */
export function slotParts(
  steps: readonly RecipeStep[],
  slots: readonly PartSlot[],
  parts: ReadonlyMap<string, Recipe>,
): RecipeStep[] {
  return slots.reduce<RecipeStep[]>(
    (sofar, slot) => {
      const part = parts.get(slot.part);
      return part === undefined ? sofar : slotOne(sofar, slot, partSteps(part));
    },
    [...steps],
  );
}

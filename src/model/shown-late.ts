import { effectiveMark } from './effective-mark.ts';
import type { Mark } from './mark.ts';
import type { Material } from './material.ts';
import type { PlannedStep } from './plan.ts';
import type { Minute } from '../time/span.ts';

/** When the film of a planned step is shown to reach `wanted`, or what stands in for it, by the slow end; undefined where nothing has to dry. */
export function shownLate(
  step: Pick<PlannedStep, 'dry'>,
  material: Material | undefined,
  wanted: Mark,
): Minute | undefined {
  const mark = material && effectiveMark(material, wanted);
  return mark && step.dry?.[mark]?.late;
}

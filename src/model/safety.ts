import { isFullCoat } from './film-needs.ts';
import type { Material } from './material.ts';
import type { Task } from './task.ts';

/** What about a piece of work calls for a safety text, worst first. */
export const safetyTriggers = [
  'disturbs-old-paint',
  'isocyanate',
  'oily-rags',
  'flammable-vapour',
  'stripper',
  'solvent',
  'two-part',
  'dusty',
  'lifting',
] as const;
export type SafetyTrigger = (typeof safetyTriggers)[number];

/** One page of `shared/safety`: shown where the work is. It never stands above the label or local rules. */
export interface SafetyPage {
  /** File name without ending. */
  readonly id: string;
  readonly title: string;
  readonly when: SafetyTrigger;
  /** One line for a bench sheet. */
  readonly short: string;
  readonly text: readonly string[];
  /** Figures and rules, each with where it comes from. */
  readonly figures: readonly { readonly say: string; readonly source: string }[];
  /** Of the text. */
  readonly source: string;
}

function isSprayed(task: Task): boolean {
  return task.ways.some((way) => way.stations.includes('spray'));
}

/** What about `task` calls for care, in the order of `safetyTriggers`. `material` is what it lays down, after the section's replacements. */
export function safetyTriggersOf(
  task: Task,
  material: Material | undefined,
  disturbsOldPaint: boolean,
): SafetyTrigger[] {
  const applies: Readonly<Record<SafetyTrigger, boolean>> = {
    'disturbs-old-paint': disturbsOldPaint,
    isocyanate: material?.isocyanate === true,
    'oily-rags': material?.oilyRags === true,
    'flammable-vapour': material?.flammableVapour === true,
    stripper: task.supplies.includes('stripper'),
    solvent: material !== undefined && isFullCoat(material) && (material.solventGPerL ?? 0) > 0 && isSprayed(task),
    'two-part': material?.mechanism === 'two-part',
    dusty: task.dusty,
    lifting: task.people > 1,
  };
  return safetyTriggers.filter((trigger) => applies[trigger]);
}

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
  /** Sentences of recipes' cautions that `short` says as well: where it is shown they are not. */
  readonly covers: readonly string[];
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
    // Said where they are put away, which is a step of its own.
    'oily-rags': task.atOnceAfter !== undefined,
    'flammable-vapour': material?.flammableVapour === true,
    stripper: task.supplies.includes('stripper'),
    solvent: material !== undefined && isFullCoat(material) && (material.solventGPerL ?? 0) > 0 && isSprayed(task),
    'two-part': material?.mechanism === 'two-part',
    dusty: task.dusty,
    lifting: task.people > 1,
  };
  return safetyTriggers.filter((trigger) => applies[trigger]);
}

/** What is said at a step for its care: the pages that it calls for, and what its recipe says besides. */
export interface Care {
  readonly pages: readonly SafetyPage[];
  /** Of the recipe's caution, what no page says. */
  readonly own: readonly string[];
}

/**
 * The care that a step of a plan calls for. Lead is not among it: what disturbs paint that may hold it is in no plan
 * before its test, and sentences about that test are dropped behind an open gate; those about oily rags stand at the step
 * that puts them away.
 */
export function careOf(task: Task, material: Material | undefined, pages: readonly SafetyPage[]): Care {
  const triggers = safetyTriggersOf(task, material, false);
  const shown = triggers.flatMap((trigger) => pages.filter((p) => p.when === trigger));
  const lead = pages.filter((p) => p.when === 'disturbs-old-paint');
  const rags = pages.filter((p) => p.when === 'oily-rags' && material?.oilyRags === true);
  const covered = new Set([...shown, ...lead, ...rags].flatMap((p) => p.covers));
  const sentences = task.caution?.split(/(?<=\.) +/) ?? [];
  const own = sentences.filter((s) => !covered.has(s)).join(' ');
  return { pages: shown, own: own === '' ? [] : [own] };
}

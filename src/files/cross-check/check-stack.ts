import type { Book } from '../../model/book.ts';
import { isFullCoat } from '../../model/film-needs.ts';
import type { Material } from '../../model/material.ts';
import type { Piece, Section } from '../../model/piece.ts';
import { insertJoin, sectionSteps, type ChainStep } from '../../model/section-steps.ts';
import { slotParts } from '../../model/slot-parts.ts';
import { stackRule } from '../../model/stack-rule.ts';
import type { Path } from '../yaml/tree.ts';
import type { Complaint } from './complaint.ts';
import { worded } from '../../words/worded.ts';

/** Where the choice of the material can be changed: its replacement, the joining step, or else the section. */
function pathOf(piece: Piece, section: Section, { recipeStep }: ChainStep): Path {
  const { material } = recipeStep;
  const join = piece.joins.findIndex((j) => j === recipeStep);
  if (material !== undefined && section.materials[material] !== undefined)
    return ['sections', section.id, 'materials', material];
  return join >= 0 ? ['joins', join] : ['sections', section.id];
}

function checkSection(book: Book, piece: Piece, section: Section): Complaint[] {
  const recipe = book.recipes.get(section.recipe);
  if (recipe === undefined) return [];
  const slotted = slotParts(recipe.steps, section.with ?? [], book.parts ?? new Map());
  const joins = piece.joins.filter((join) => join.section === section.id);
  const chain = joins.reduce<readonly ChainStep[]>(insertJoin, sectionSteps(slotted, section));
  const complaints: Complaint[] = [];
  let below: Material | undefined;
  for (const step of chain) {
    const id = step.recipeStep.material;
    const upper = id === undefined ? undefined : book.materials.get(section.materials[id] ?? id);
    if (upper === undefined) continue;
    const rule = below && stackRule(below, upper);
    if (below !== undefined && rule?.verdict === 'no')
      complaints.push({
        code: 'stack-refused',
        severity: 'error',
        file: `pieces/${piece.id}.yaml`,
        path: pathOf(piece, section, step),
        message: worded`${section.id}/${step.id}: ${upper.id} cannot go over ${below.id}: ${rule.why}`,
        advice:
          rule.barrier === undefined
            ? worded`use another material for one of the two, or take off what lies below`
            : worded`lay a coat of ${rule.barrier} between the two`,
      });
    if (isFullCoat(upper)) below = upper;
  }
  return complaints;
}

/** Coats that cannot lie on the one below, in the order in which each section gets them. */
export function checkStack(book: Book, piece: Piece): Complaint[] {
  return piece.sections.flatMap((section) => checkSection(book, piece, section));
}

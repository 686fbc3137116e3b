import type { Book } from './book.ts';
import { isFullCoat } from './film-needs.ts';
import type { Material } from './material.ts';
import type { Piece } from './piece.ts';
import { findStep, insertJoin, sectionSteps, type ChainStep } from './section-steps.ts';
import { slotParts } from './slot-parts.ts';
import { asSafeAsTape, tradeProblems, type TradeProblem } from './trade-order.ts';
import { worded } from '../words/worded.ts';

/** A problem of the trade in one section of a piece. */
export interface SectionProblem extends TradeProblem {
  readonly section: string;
}

/**
 * What the trade would not do on this piece: its recipes with parts slotted in, steps left out, materials replaced and
 * joining steps put in. Recipes that are not there are passed over.
 */
export function tradeOfPiece(book: Book, piece: Piece): SectionProblem[] {
  return piece.sections.flatMap((section) => {
    const recipe = book.recipes.get(section.recipe);
    if (recipe === undefined) return [];
    const slotted = slotParts(recipe.steps, section.with ?? [], book.parts ?? new Map());
    const chain = piece.joins
      .filter((join) => join.section === section.id)
      .reduce<readonly ChainStep[]>(insertJoin, sectionSteps(slotted, section));
    const materialOf = (id: string) => book.materials.get(section.materials[id] ?? id);
    const own = tradeProblems(chain, materialOf).map((problem) => ({ ...problem, section: section.id }));
    return [...own, ...tapedFromElsewhere(piece, section.id, chain, materialOf)];
  });
}

/** Masks of other sections that are put onto the films of this one: of those, only the wait itself says when. */
function tapedFromElsewhere(
  piece: Piece,
  on: string,
  chain: readonly ChainStep[],
  materialOf: (id: string) => Material | undefined,
): SectionProblem[] {
  return piece.joins
    .filter((join) => join.stage === 'mask' && join.section !== on)
    .flatMap((join) =>
      (join.after ?? []).flatMap((link): SectionProblem[] => {
        const [section, name = ''] = link.step.split('/');
        const { mark } = link;
        const material = materialOf(findStep(chain, name, 'last')?.recipeStep.material ?? '');
        const isFilm = section === on && material !== undefined && isFullCoat(material);
        if (!isFilm || (mark !== undefined && asSafeAsTape.includes(mark))) return [];
        return [
          {
            code: 'tape-too-soon',
            section: join.section,
            step: join.id,
            message: worded`tapes over "${link.step}" ${mark === undefined ? worded`as soon as it is laid` : worded`at its mark ${mark}`}`,
            advice: worded`write after: ${link.step} @ tape`,
          },
        ];
      }),
    );
}

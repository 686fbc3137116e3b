import type { Book } from './book.ts';
import type { Piece } from './piece.ts';
import { insertJoin, sectionSteps, type ChainStep } from './section-steps.ts';
import { slotParts } from './slot-parts.ts';
import { tradeProblems, type TradeProblem } from './trade-order.ts';

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
    return tradeProblems(chain, materialOf).map((problem) => ({ ...problem, section: section.id }));
  });
}

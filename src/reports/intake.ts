import type { Proposal } from '../intake/propose.ts';
import type { Recipe } from '../model/recipe.ts';
import { grid, paragraph, type Cell } from './layout.ts';
import type { Look } from './look.ts';
import { sayArea } from './say-quantity.ts';
import type { Manner } from './say-time.ts';

/** What is proposed for a piece: each section with its area, its recipe, and what was put in and left out, with reasons. */
export function proposalScreen(
  proposal: Proposal,
  recipes: ReadonlyMap<string, Recipe>,
  manner: Manner,
  look: Look,
): string {
  const { warn, strong } = look.paint;
  const rows = proposal.sections.map(({ section, reasons }): readonly Cell[] => {
    const parts = (section.with ?? []).map(({ part }) => `with ${part}: ${reasons.get(part) ?? ''}`);
    const without = section.without.map((step) => `without ${step}: ${reasons.get(step) ?? ''}`);
    const items = section.items === 1 ? '' : `${section.items} in all, `;
    return [
      section.name,
      items + sayArea(section.areaM2, manner),
      [recipes.get(section.recipe)?.name ?? section.recipe, ...parts, ...without],
    ];
  });
  const left = proposal.left.flatMap((text) => paragraph(`Not planned: ${text}`, look, 2, warn, 4));
  return [strong(proposal.piece.name), ...grid(rows, [{ least: 12 }, { least: 12 }, {}], look, 2), ...left, ''].join(
    '\n',
  );
}

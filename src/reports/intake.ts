import type { Proposal, ProposedSection } from '../intake/propose.ts';
import type { Recipe } from '../model/recipe.ts';
import { grid, painted, paragraph, type Cell } from './layout.ts';
import type { Look } from './look.ts';
import { sayArea } from './say-quantity.ts';
import type { Manner } from './say-time.ts';
import { worded } from '../words/worded.ts';

/** What is proposed for a piece: each section with its area, its recipe, and what was put in and left out, with reasons; `howMade`: how its area was reckoned. */
export function proposalScreen(
  proposal: Proposal,
  recipes: ReadonlyMap<string, Recipe>,
  manner: Manner,
  look: Look,
  howMade: (section: ProposedSection) => readonly string[] = () => [],
): string {
  const { warn, strong, quiet } = look.paint;
  const rows = proposal.sections.map((proposed): readonly Cell[] => {
    const { section, reasons } = proposed;
    const parts = (section.with ?? []).map(({ part }) => worded`with ${part}: ${reasons.get(part) ?? ''}`);
    const without = section.without.map((step) => worded`without ${step}: ${reasons.get(step) ?? ''}`);
    const items = section.items === 1 ? '' : worded`${section.items} in all, `;
    return [
      section.name,
      items + sayArea(section.areaM2, manner),
      [
        recipes.get(section.recipe)?.name ?? section.recipe,
        ...parts,
        ...without,
        ...howMade(proposed).map((text) => painted(quiet, text)),
      ],
    ];
  });
  const left = proposal.left.flatMap((text) => paragraph(worded`Not planned: ${text}`, look, 2, warn, 4));
  return [strong(proposal.piece.name), ...grid(rows, [{ least: 12 }, { least: 12 }, {}], look, 2), ...left, ''].join(
    '\n',
  );
}

import type { Book } from '../model/book.ts';
import type { Material, Mechanism } from '../model/material.ts';
import { paragraph } from './layout.ts';
import type { Look } from './look.ts';
import { phrase, translated, worded } from '../words/worded.ts';

/** Something that the dates rest on and that nobody has measured well. */
export interface Doubt {
  readonly code: string;
  readonly text: string;
}

const inWood: Doubt = {
  code: 'wood-water',
  text: phrase(
    'How fast glue and wash water leave the wood is a rule of this program, on moisture data that are old: fine for practice, no science.',
  ),
};

const ofMechanism: Readonly<Record<Mechanism, Doubt | undefined>> = {
  solvent: {
    code: 'solvent-held-back',
    text: phrase(
      'Solvent held back in a film follows no published law: full hardness of shellac and lacquer may come later in the cold.',
    ),
  },
  oxidation: {
    code: 'oil-in-the-cold',
    text: phrase(
      'How much the cold slows oils and alkyds is not published in one figure; half the speed for each 10 °C (18 °F) is taken.',
    ),
  },
  water: {
    code: 'damp-late',
    text: phrase(
      'How much damp air slows the late drying of water-borne coats is in dispute; it counts less for handling and stacking, and not at all for cure.',
    ),
  },
  'moisture-cure': {
    code: 'damp-cure',
    text: phrase('How moisture-curing coats follow warmth and damp is known in kind, not in figures.'),
  },
  'two-part': {
    code: 'cold-cure',
    text: phrase(
      'In the cold a two-part material may stall short of full cure; filler goes more by its hardener than by the air.',
    ),
  },
  'pva-glue': inWood,
  'hide-glue': inWood,
  'wood-water': inWood,
  none: undefined,
};

const OWN_TRADE = 'common practice, no source';

/** Weak ground under the dates of what is still to be laid, each said once. */
export function doubtsOf(laid: ReadonlySet<string>, book: Book): Doubt[] {
  const materials = [...book.materials.values()].filter((m) => laid.has(m.id));
  const unsourced = materials.some((m: Material) => Object.values(m.marks).some((mark) => mark.source === OWN_TRADE));
  const figures: Doubt = {
    code: 'trade-figures',
    text: worded`Most drying hours here are common practice, not published tests: where the container says otherwise, put its hours into a file of your own. No public table of recoat times against both warmth and damp was found.`,
  };
  const byLaw = materials.flatMap((m) => ofMechanism[m.mechanism] ?? []);
  return [...(unsourced ? [figures] : []), ...new Set(byLaw)];
}

/** The doubts under a heading, e.g. of dates. */
export function doubtLines(doubts: readonly Doubt[], look: Look, heading = worded`What these dates rest on`): string[] {
  if (doubts.length === 0) return [];
  return [
    ...paragraph(heading, look, 0, look.paint.strong),
    ...doubts.flatMap(({ text }) => paragraph(translated(text), look, 2, look.paint.quiet, 4)),
  ];
}

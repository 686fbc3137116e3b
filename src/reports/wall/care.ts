import type { Family } from '../../model/material.ts';

/**
 * What a buyer may mind, by what the last film is made of. Common practice, no source, except where one is named: the
 * card says so too. It never stands above the label of the finish.
 */
export const careOf: Partial<Readonly<Record<Family, readonly string[]>>> = {
  shellac: [
    'Wipe up spirits and perfume at once: alcohol softens shellac.',
    'Use mats under hot dishes and wet glasses: heat and standing water leave white rings.',
  ],
  'water-borne': [
    'Wipe with a damp cloth; no strong alkaline cleaner.',
    'Things left standing on it in the first weeks may stick.',
  ],
  alkyd: ['Wipe with a damp cloth and mild soap.', 'A light yellowing with time and in the dark is usual.'],
  oil: ['Wipe with a dry or barely damp cloth; oil again when it looks dry.', 'Wipe up water and wine soon.'],
  lacquer: ['Use mats under hot dishes; keep solvents, nail varnish and rubber feet off it.'],
  wax: ['Dust with a dry cloth; wax thinly again when it turns dull.', 'Use mats: heat and standing water mark wax.'],
  'two-part': ['Wipe with a damp cloth and mild soap; no scouring powder.'],
  'chalk-paint': ['Wipe with a barely damp cloth; without a coat of wax or varnish over it, it marks.'],
  'stain-oil': ['A stain without a coat over it wears: keep water off it.'],
  'stain-water': ['A stain without a coat over it wears: keep water off it.'],
};

export const careForAll = [
  'Dust with a soft cloth. No silicone polish: it stops any later finish from holding.',
  'Keep it out of strong sun and away from radiators; steady humidity spares the wood.',
  'Lift it by its frame, never by its top, doors or drawers.',
];

import type { Family } from '../../model/material.ts';
import { phrase } from '../../words/worded.ts';

/**
 * What a buyer may mind, by what the last film is made of. Common practice, no source, except where one is named: the
 * card says so too. It never stands above the label of the finish.
 */
export const careOf: Partial<Readonly<Record<Family, readonly string[]>>> = {
  shellac: [
    phrase('Wipe up spirits and perfume at once: alcohol softens shellac.'),
    phrase('Use mats under hot dishes and wet glasses: heat and standing water leave white rings.'),
  ],
  'water-borne': [
    phrase('Wipe with a damp cloth; no strong alkaline cleaner.'),
    phrase('Things left standing on it in the first weeks may stick.'),
  ],
  alkyd: [
    phrase('Wipe with a damp cloth and mild soap.'),
    phrase('A light yellowing with time and in the dark is usual.'),
  ],
  oil: [
    phrase('Wipe with a dry or barely damp cloth; oil again when it looks dry.'),
    phrase('Wipe up water and wine soon.'),
  ],
  lacquer: [phrase('Use mats under hot dishes; keep solvents, nail varnish and rubber feet off it.')],
  wax: [
    phrase('Dust with a dry cloth; wax thinly again when it turns dull.'),
    phrase('Use mats: heat and standing water mark wax.'),
  ],
  'two-part': [phrase('Wipe with a damp cloth and mild soap; no scouring powder.')],
  'chalk-paint': [phrase('Wipe with a barely damp cloth; without a coat of wax or varnish over it, it marks.')],
  'stain-oil': [phrase('A stain without a coat over it wears: keep water off it.')],
  'stain-water': [phrase('A stain without a coat over it wears: keep water off it.')],
};

export const careForAll = [
  phrase('Dust with a soft cloth. No silicone polish: it stops any later finish from holding.'),
  phrase('Keep it out of strong sun and away from radiators; steady humidity spares the wood.'),
  phrase('Lift it by its frame, never by its top, doors or drawers.'),
];

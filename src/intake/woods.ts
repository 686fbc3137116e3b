import { phrase } from '../words/worded.ts';

/** What a wood asks of a finish. */
export interface Wood {
  readonly name: string;
  /** Pores so large that they show through a film unless they are filled. */
  readonly openGrained: boolean;
  /** Its tannin or its knots bleed brown through a water-borne film. */
  readonly bleeds: boolean;
}

function wood(name: string, openGrained: boolean, bleeds: boolean): Wood {
  return { name, openGrained, bleeds };
}

/**
 * Woods that furniture is made of. Which have large pores: from memory, after the finishing chapter of the Wood Handbook
 * (Forest Products Laboratory); which bleed: common practice, no source.
 */
export const woods: readonly Wood[] = [
  wood(phrase('pine'), false, true),
  wood(phrase('cedar'), false, true),
  wood(phrase('oak'), true, true),
  wood(phrase('chestnut'), true, true),
  wood(phrase('mahogany'), true, true),
  wood(phrase('walnut'), true, true),
  wood(phrase('ash'), true, false),
  wood(phrase('elm'), true, false),
  wood(phrase('beech'), false, false),
  wood(phrase('birch'), false, false),
  wood(phrase('maple'), false, false),
  wood(phrase('cherry'), false, false),
];

export const unknownWood: Wood = wood(phrase('unknown'), false, false);

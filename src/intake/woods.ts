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
  wood('pine', false, true),
  wood('cedar', false, true),
  wood('oak', true, true),
  wood('chestnut', true, true),
  wood('mahogany', true, true),
  wood('walnut', true, true),
  wood('ash', true, false),
  wood('elm', true, false),
  wood('beech', false, false),
  wood('birch', false, false),
  wood('maple', false, false),
  wood('cherry', false, false),
];

export const unknownWood: Wood = wood('unknown', false, false);

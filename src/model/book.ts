import type { Entry } from './journal.ts';
import type { Material } from './material.ts';
import type { Piece } from './piece.ts';
import type { Recipe } from './recipe.ts';
import type { Shop } from './shop.ts';
import type { Supply } from './supply.ts';

/** Everything the files of a shop say, checked and in one place: what every answer is worked out from. */
export interface Book {
  readonly shop: Shop;
  readonly materials: ReadonlyMap<string, Material>;
  readonly recipes: ReadonlyMap<string, Recipe>;
  /** Small lists of steps that a section slots into its recipe; absent: none. */
  readonly parts?: ReadonlyMap<string, Recipe>;
  /** What work uses up beside its materials; absent: not read, for only what is bought or priced needs it. */
  readonly supplies?: ReadonlyMap<string, Supply>;
  /** By id, in order of id. */
  readonly pieces: readonly Piece[];
  readonly journal: readonly Entry[];
}

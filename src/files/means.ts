import type { Means } from '../intake/propose.ts';
import type { Book } from '../model/book.ts';
import type { Piece } from '../model/piece.ts';
import type { Recipe } from '../model/recipe.ts';
import { checkRecipe } from './cross-check/check-recipe.ts';
import type { Complaint } from './cross-check/complaint.ts';
import { checkOnePiece } from './cross-check/cross-check.ts';
import type { Library } from './library.ts';
import type { Libraries } from './read-book.ts';

export interface ShopMeans extends Means {
  /** What `check` would say of this piece. */
  readonly check: (piece: Piece) => readonly Complaint[];
}

function all<T>(library: Library<T>): Map<string, T> {
  return new Map(
    library.ids.flatMap((id): [string, T][] => {
      const value = library.get(id);
      return value === undefined ? [] : [[id, value]];
    }),
  );
}

/** The recipes and parts that a shop can do with its tools, places and hands. */
export function meansOf(book: Book, libraries: Libraries): ShopMeans {
  const { shop } = book;
  const doable = (library: Library<Recipe>) =>
    new Map(
      [...all(library)].filter(
        ([id, recipe]) =>
          !checkRecipe(recipe, id, shop, libraries.materials.ids, (material) => libraries.materials.get(material)).some(
            (complaint) => complaint.severity === 'error',
          ),
      ),
    );
  const materials = all(libraries.materials);
  const [recipes, parts] = [doable(libraries.recipes), doable(libraries.parts)];
  const whole = { book: { ...book, recipes, parts, materials }, ...libraries };
  const check = (piece: Piece) => checkOnePiece(piece, whole);
  return { recipes, parts, materialOf: (id) => materials.get(id), check, problems: (piece) => check(piece).length };
}

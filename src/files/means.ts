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
  const lacksFor = (id: string, recipe: Recipe) => [
    ...new Set(
      checkRecipe(recipe, id, shop, libraries.materials.ids, (material) => libraries.materials.get(material))
        .filter((complaint) => complaint.severity === 'error')
        .map((complaint) => complaint.message),
    ),
  ];
  const judged = (library: Library<Recipe>) =>
    [...all(library)].map(([id, recipe]) => ({ id, recipe, lacks: lacksFor(id, recipe) }));
  const doable = (of: ReturnType<typeof judged>) =>
    new Map(of.filter(({ lacks }) => lacks.length === 0).map(({ id, recipe }) => [id, recipe]));
  const [ofRecipes, ofParts] = [judged(libraries.recipes), judged(libraries.parts)];
  const beyond = new Map(ofRecipes.filter(({ lacks }) => lacks.length > 0).map(({ id, ...rest }) => [id, rest]));
  const materials = all(libraries.materials);
  const [recipes, parts] = [doable(ofRecipes), doable(ofParts)];
  const whole = { book: { ...book, recipes, parts, materials }, ...libraries };
  const check = (piece: Piece) => checkOnePiece(piece, whole);
  const problems = (piece: Piece) => check(piece).length;
  return { recipes, parts, beyond, materialOf: (id) => materials.get(id), check, problems };
}

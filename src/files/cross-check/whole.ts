import type { Book } from '../../model/book.ts';
import type { Material } from '../../model/material.ts';
import type { Recipe } from '../../model/recipe.ts';
import type { Library } from '../library.ts';

/** What is checked against each other: all that was read, and all ids that there are. */
export interface Whole {
  readonly book: Book & Required<Pick<Book, 'parts'>>;
  readonly recipes: Library<Recipe>;
  readonly parts: Library<Recipe>;
  readonly materials: Library<Material>;
}

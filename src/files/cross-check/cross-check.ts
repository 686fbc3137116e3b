import type { Book } from '../../model/book.ts';
import type { Finding, Place } from '../../model/finding.ts';
import type { Material } from '../../model/material.ts';
import type { Recipe } from '../../model/recipe.ts';
import type { Library } from '../library.ts';
import type { Path } from '../yaml/tree.ts';
import { type Complaint, findingOf } from './complaint.ts';

/** What is checked against each other, and all ids that there are. */
export interface Whole {
  readonly book: Book & Required<Pick<Book, 'parts'>>;
  readonly recipes: Library<Recipe>;
  readonly parts: Library<Recipe>;
  readonly materials: Library<Material>;
}

export function crossCheck(whole: Whole, placeOf: (file: string, path: Path) => Place | undefined): Finding[] {
  const complaints: Complaint[] = [];
  void whole;
  return complaints.map((c) => findingOf(c, placeOf));
}

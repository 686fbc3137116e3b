import type { Finding, Place } from '../../model/finding.ts';
import type { Piece } from '../../model/piece.ts';
import type { Recipe } from '../../model/recipe.ts';
import type { Library } from '../library.ts';
import type { Path } from '../yaml/tree.ts';
import { checkAppointments } from './check-appointments.ts';
import { checkMaterial } from './check-material.ts';
import { checkOrder } from './check-order.ts';
import { checkPiece } from './check-piece.ts';
import { checkRecipe } from './check-recipe.ts';
import { checkShop } from './check-shop.ts';
import { checkStack } from './check-stack.ts';
import { checkTrade } from './check-trade.ts';
import { type Complaint, findingOf } from './complaint.ts';
import type { Whole } from './whole.ts';
import { worded } from '../../words/worded.ts';

/** The recipe that does without a second hand. */
function aloneOf(recipe: string): string {
  return `${recipe}-alone`;
}

function needsMoreHands({ code }: Complaint): boolean {
  return code === 'too-few-hands' || code === 'never-together';
}

function checkRecipes(read: ReadonlyMap<string, Recipe>, library: Library<Recipe>, whole: Whole): Complaint[] {
  return [...read].flatMap(([id, recipe]) =>
    checkRecipe(recipe, library.fileOf(id) ?? id, whole.book.shop, whole.materials.ids, (material) =>
      whole.materials.get(material),
    ).map((complaint) =>
      needsMoreHands(complaint) && library.ids.includes(aloneOf(id))
        ? { ...complaint, advice: worded`write ${aloneOf(id)} for ${id} in the pieces, or ${complaint.advice ?? ''}` }
        : complaint,
    ),
  );
}

/** What is wrong with one piece; recipes and parts must be sound. */
export function checkOnePiece(piece: Piece, whole: Whole): Complaint[] {
  const own = checkPiece(piece, whole);
  if (own.some(isError)) return own;
  return [...own, ...checkOrder(whole.book, piece), ...checkStack(whole.book, piece), ...checkTrade(whole.book, piece)];
}

function isError(complaint: { readonly severity: Finding['severity'] }): boolean {
  return complaint.severity === 'error';
}

/**
 * What does not fit together between the files of a shop, each of which is sound in itself. `sound`: no file was found
 * to be wrong, so that recipes may be laid onto pieces.
 */
export function crossCheck(
  whole: Whole,
  placeOf: (file: string, path: Path) => Place | undefined,
  sound: boolean,
): Finding[] {
  const { book } = whole;
  const shared = [
    ...checkShop(book.shop, whole.materials.ids, book.materials, book.supplies),
    ...(sound ? checkAppointments(whole) : []),
    ...checkRecipes(book.recipes, whole.recipes, whole),
    ...checkRecipes(book.parts, whole.parts, whole),
    ...[...book.materials].flatMap(([id, material]) =>
      checkMaterial(material, whole.materials.fileOf(id) ?? id, whole.materials.ids),
    ),
  ];
  const mayLay = sound && !shared.some(isError);
  const pieces = book.pieces.flatMap((piece) => (mayLay ? checkOnePiece(piece, whole) : checkPiece(piece, whole)));
  return [...shared, ...pieces].map((complaint) => findingOf(complaint, placeOf));
}

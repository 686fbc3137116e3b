import { expect, test } from 'vitest';
import { namedIn, namesOf } from '../../src/reports/names.ts';
import { soldAs } from '../../src/bookkeeping/shopping.ts';
import { readBook } from '../../src/files/read-book.ts';
import { shippedDir } from '../../src/files/shipped.ts';
import { demoBook } from '../planning/demo.ts';

test('just the names say of everything what the whole book says', () => {
  const book = demoBook();
  const [whole, just] = [namesOf(book), namesOf(namedIn(book))];
  const { rooms, stations, hands, tools } = book.shop;
  const ids = ['nowhere-else', ...[...book.pieces, ...rooms, ...stations, ...hands, ...tools].map(({ id }) => id)];
  for (const id of [...ids, ...book.recipes.keys(), ...book.materials.keys(), 'zip-bag', 'abrasive-120'])
    for (const of of ['piece', 'room', 'station', 'hand', 'tool', 'recipe', 'material'] as const)
      expect(just[of](id)).toBe(whole[of](id));
  for (const piece of book.pieces)
    for (const { id } of piece.sections) expect(just.section(piece.id, id)).toBe(whole.section(piece.id, id));
});

test('what work uses up is called on the bench sheet as on the shopping list', () => {
  const { book } = readBook('shared/demo', { shippedDir: shippedDir(), supplies: true });
  if (book?.supplies === undefined) throw new Error('the demo shop was not read');
  const ids = [...book.supplies.keys(), 'abrasive-120', 'abrasive-400'];
  for (const id of ids) expect(namesOf(book).material(id)).toBe(soldAs(book, id).name);
  for (const id of ids) expect(namesOf(namedIn(book)).material(id)).toBe(soldAs(book, id).name);
});

import { expect, test } from 'vitest';
import { namedIn, namesOf } from '../../src/reports/names.ts';
import { demoBook } from '../planning/demo.ts';

test('just the names say of everything what the whole book says', () => {
  const book = demoBook();
  const [whole, just] = [namesOf(book), namesOf(namedIn(book))];
  const { rooms, stations, hands, tools } = book.shop;
  const ids = ['nowhere-else', ...[...book.pieces, ...rooms, ...stations, ...hands, ...tools].map(({ id }) => id)];
  for (const id of [...ids, ...book.recipes.keys(), ...book.materials.keys()])
    for (const of of ['piece', 'room', 'station', 'hand', 'tool', 'recipe', 'material'] as const)
      expect(just[of](id)).toBe(whole[of](id));
  for (const piece of book.pieces)
    for (const { id } of piece.sections) expect(just.section(piece.id, id)).toBe(whole.section(piece.id, id));
});

import { expect, test } from 'vitest';
import { shopAir } from '../../src/air/shop-air.ts';
import type { Book } from '../../src/model/book.ts';
import type { RecipeStep } from '../../src/model/recipe.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { planShop } from '../../src/schedule/plan-shop.ts';
import * as part from '../support/book-parts.ts';
import { now } from './tiny-shops.ts';
import { tryAll } from './try-all.ts';

// Paint that is dry to the touch after 1 h and may be moved after 6 h. A look at it in between has to leave it where it is.

const paint = part.materialOf('paint', {
  marks: { touch: part.sheetHours(1, 1, 1), handle: part.sheetHours(6, 6, 6) },
});
const hours = part.weekOf(part.clock([8, 24]));

function bookOf(first: readonly RecipeStep[]): Book {
  const lay = part.stepOf('lay', 'coat', [part.wayOf(60)], { material: 'paint' });
  const shop = part.shopOf(hours, {
    stations: [part.stationOf('bench', 'Bench', 'room', 'bench'), part.stationOf('floor', 'Floor', 'room', 'floor')],
    hands: [
      part.handOf('owner', 'Owner', [], hours),
      part.handOf('helper', 'Helper', [], part.weekOf(part.clock([16, 17]))),
    ],
  });
  return part.bookOf(
    shop,
    [paint],
    [part.recipeOf('first', [lay, ...first]), part.recipeOf('second', [lay])],
    [
      part.pieceOf('one', [part.sectionOf('top', 'first')]),
      part.pieceOf('two', [part.sectionOf('top', 'second')], { arrives: now + 2 * 60 }),
    ],
  );
}

/** Hours after now at which each step starts, by the planner; its plan must cost as little as any. */
function startsOf(book: Book): Record<string, number> {
  const situation = situationOf(book, now);
  const to = now + 3 * 1440;
  const air = shopAir(book.shop, now, to);
  const draft = planShop(situation, air, { seed: 1, steps: 20_000, to, factors: new Map() });
  if (!draft.found) throw new Error('no plan');
  const cheapest = tryAll({ situation, air, to, gridMinutes: 60 });
  expect(draft.proof.objective.at(-1)).toEqual({ name: 'all', value: cheapest?.value, bound: cheapest?.value });
  return Object.fromEntries(draft.steps.map((s) => [s.id, (s.spans[0]!.start - now) / 60]));
}

const look = part.stepOf('look', 'inspect', [part.wayOf(60)]);

test('the last step of a section is done on what cannot be moved yet, and the place is kept until it can', () => {
  expect(startsOf(bookOf([look]))).toEqual({ 'one/top/lay': 0, 'one/top/look': 2, 'two/top/lay': 7 });
});

test('a step in between gives the place free once all can be moved, though the next step comes much later', () => {
  const lift = part.stepOf('lift', 'refit', [part.wayOf(60, { stations: ['floor'] })], { people: 2 });
  const starts = startsOf(bookOf([look, lift]));
  expect(starts).toEqual({ 'one/top/lay': 0, 'one/top/look': 2, 'one/top/lift': 8, 'two/top/lay': 7 });
});

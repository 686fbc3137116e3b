import { expect } from 'vitest';
import { shopAir } from '../../src/air/shop-air.ts';
import type { Book } from '../../src/model/book.ts';
import { situationOf } from '../../src/planning/situation-of.ts';
import { type Draft, planShop } from '../../src/schedule/plan-shop.ts';
import { now } from './tiny-shops.ts';
import { tryAll } from './try-all.ts';

const DAY = 1440;

/**
 * Holds the planner's answer over `days` days, and its proof, against the cheapest of all plans that there are on a grid of
 * so many minutes. Answers the plan, if there is one.
 */
export function cheapestOfAll(book: Book, days: number, gridMinutes: number): (Draft & { found: true }) | undefined {
  const situation = situationOf(book, now);
  const to = now + days * DAY;
  const air = shopAir(book.shop, now - DAY, to + 21 * DAY);
  const draft = planShop(situation, air, { seed: 1, steps: 500_000, to, factors: new Map() });
  const cheapest = tryAll({ situation, air, to, gridMinutes });
  expect(draft.found).toBe(cheapest !== undefined);
  if (!draft.found || cheapest === undefined) {
    expect(draft).toMatchObject({ found: false, proven: true });
    return undefined;
  }
  const { objective, proven } = draft.proof;
  expect(objective.at(-1)).toEqual({ name: 'all', value: cheapest.value, bound: cheapest.value });
  expect(proven).toBe(true);
  return draft;
}
